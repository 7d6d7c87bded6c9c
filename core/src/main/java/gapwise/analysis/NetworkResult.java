package gapwise.analysis;

/** Treatments compared through a network of studies. Part of a {@link Result}. */
public record NetworkResult() {}
