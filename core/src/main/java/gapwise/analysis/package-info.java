/**
 * The bridge: from a plan in JSON and its rows to effects, to synthesis, to the result in JSON, one
 * short class a step. Plan and result are explained in docs/plan.md.
 *
 * <p>Start at {@link gapwise.analysis.Runner}. Formulas do not belong here; they stand in effect
 * and synthesis.
 */
package gapwise.analysis;
