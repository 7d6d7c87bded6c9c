/**
 * A reference to a paper as a file of references gives it: people, titles, place, numbers, links to
 * notices, and what the file says beyond that.
 *
 * <p>Start at {@link gapwise.reference.Reference}. Files are read and written in {@code format};
 * whether two references are of one paper is asked in {@code pair}.
 */
package gapwise.reference;
