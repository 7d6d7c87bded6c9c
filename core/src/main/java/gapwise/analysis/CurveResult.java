package gapwise.analysis;

/** One survival curve put back together from a published one. Part of a {@link Result}. */
public record CurveResult() {}
