package gapwise.analysis;

/** What moderators explain of the differences between studies. Part of a {@link Result}. */
public record RegressionResult() {}
