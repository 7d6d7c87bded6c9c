/**
 * A paper extracted by two people who do not see each other's work: where it stands, what differs,
 * what was settled of it, the record that follows, and how far people agree by field. Keeps
 * nothing, asks nobody. Start at {@link gapwise.extraction.TwiceRead} and {@link
 * gapwise.extraction.Compared}.
 */
package gapwise.extraction;
