/**
 * How far a pooled value hangs on single studies.
 *
 * <p>Start at {@link gapwise.synthesis.diagnostics.Influence}. Judging the quality of a study does
 * not belong here.
 */
package gapwise.synthesis.diagnostics;
