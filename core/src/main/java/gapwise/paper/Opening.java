package gapwise.paper;

/** What came of opening a file: the {@link Opened} paper, or why not. */
public sealed interface Opening permits Opened, Refused {}
