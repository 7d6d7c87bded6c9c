package gapwise.paper;

/** What came of drawing a page: a {@link Picture}, or why not. */
public sealed interface PagePicture permits Picture, Refused {}
