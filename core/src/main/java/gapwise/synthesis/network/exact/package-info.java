/**
 * Treatments compared through a network of studies by the exact likelihood of their counts: events
 * of each arm given the events of the whole study, so that nothing is added to empty cells.
 *
 * <p>Start at {@link gapwise.synthesis.network.exact.ExactNetwork}; one study's part is {@link
 * gapwise.synthesis.network.exact.StudyMarginal}. Effects with normal errors belong in the room
 * above.
 */
package gapwise.synthesis.network.exact;
