/**
 * Mathematics that the libraries lack or do less exactly than pooling needs: bracketed roots, sums
 * without cancellation, beta quantiles down to the smallest proportions, gamma quantiles of the
 * largest counts.
 *
 * <p>Start at {@link gapwise.numeric.BracketedRoot}. No word of statistics' trade or of bones
 * belongs here, and nothing of ours is used but the budget, which long sums ask.
 */
package gapwise.numeric;
