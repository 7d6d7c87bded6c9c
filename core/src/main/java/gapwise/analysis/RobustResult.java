package gapwise.analysis;

/** Coefficients with standard errors that allow for clusters. Part of a {@link Result}. */
public record RobustResult() {}
