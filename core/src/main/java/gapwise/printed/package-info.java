/**
 * What the text of one cell or phrase of a paper means: a count of a total, a mean with its spread,
 * a number with its unit, a date that was something else, nothing.
 *
 * <p>Start at {@link gapwise.printed.Printed}, and at {@link gapwise.printed.Proposer} for the
 * columns of the template that a text fills. Where two readings are possible, both are told and
 * neither is chosen. Where a text stands, and what the texts beside it say, is not known here.
 */
package gapwise.printed;
