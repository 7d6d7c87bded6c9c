/**
 * References that are kept in an evidence base: the records with their sources, what a person
 * settled of two of them, groups of one paper, and what is told of papers. Knows no store. Start at
 * {@link gapwise.reference.kept.KeptReference} and {@link gapwise.reference.kept.Compared}.
 */
package gapwise.reference.kept;
