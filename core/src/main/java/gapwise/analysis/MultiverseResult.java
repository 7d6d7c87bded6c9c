package gapwise.analysis;

/** The pooled value under every defensible way of working it out. Part of a {@link Result}. */
public record MultiverseResult() {}
