package gapwise.analysis;

/** Variances between clusters and within them. Part of a {@link Result}. */
public record ThreeLevelResult() {}
