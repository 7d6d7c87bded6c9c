/**
 * One case placed among published evidence: its course of phases, the clocks on which its
 * milestones stand, and where these fall among the series of each method. Nothing of a case is
 * kept.
 *
 * <p>Start at {@link gapwise.place.PlacedCases}. Which series count is decided in {@code
 * selection}, every share is computed in {@code analysis} through a plan; here they are put
 * together and worded.
 */
package gapwise.place;
