package gapwise.analysis;

/** Posterior of a random-effects model. Part of a {@link Result}. */
public record BayesianResult() {}
