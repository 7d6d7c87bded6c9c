package gapwise.analysis;

/** What a funnel plot draws. Part of a {@link Result}. */
public record FunnelResult() {}
