/**
 * The bridge: from a plan in JSON and its rows to a result. This is its door; below it stand what
 * every plan has ({@code plan}, {@code rows}, {@code result}) and one room for each task or part.
 *
 * <p>Start at {@link gapwise.analysis.Runner}. Plan and result are explained in docs/plan.md.
 * Formulas do not belong here; they stand in effect and synthesis.
 */
package gapwise.analysis;
