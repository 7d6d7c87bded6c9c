package gapwise.paper;

/** What came of reading a page: the {@link Page}, or why not. */
public sealed interface PageReading permits Page, Refused {}
