/**
 * How alike two titles, two people, two lists of people, two journals or two spans of pages are,
 * whatever they were read from.
 *
 * <p>Start at {@link gapwise.reference.likeness.TitleLikeness} and {@link
 * gapwise.reference.likeness.PeopleLikeness}. What follows from a likeness, such as that two
 * records are of one paper, is decided elsewhere.
 */
package gapwise.reference.likeness;
