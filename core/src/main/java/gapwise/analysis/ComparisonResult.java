package gapwise.analysis;

/** Two survival curves compared. Part of a {@link Result}. */
public record ComparisonResult() {}
