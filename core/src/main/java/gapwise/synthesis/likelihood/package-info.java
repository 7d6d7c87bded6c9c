/**
 * Counts pooled by their own likelihood: events, rates and fourfold tables whose true values differ
 * between studies by a normal distribution on the logit or log scale. Nothing is added to zero
 * cells.
 *
 * <p>Start at {@link gapwise.synthesis.likelihood.ExactLikelihood}, or for many fits of bare arrays
 * at {@link gapwise.synthesis.likelihood.BinomialNormal}; with moderators at {@link
 * gapwise.synthesis.likelihood.CountRegression}. A further kind of count is one {@link
 * gapwise.synthesis.likelihood.StudyLikelihoods}. Plans and JSON do not belong here.
 */
package gapwise.synthesis.likelihood;
