/**
 * Mathematics that the libraries lack or do less exactly than pooling needs: bracketed roots, sums
 * without cancellation, beta quantiles down to the smallest proportions.
 *
 * <p>Start at {@link gapwise.numeric.BracketedRoot}. No word of statistics' trade or of bones
 * belongs here, and nothing of ours is used.
 */
package gapwise.numeric;
