/**
 * Results of plans as values, and their JSON: an envelope with what every task tells, and the one
 * part a task makes.
 *
 * <p>Start at {@link gapwise.analysis.result.Result}. The parts themselves stand in the folders of
 * their tasks. Nothing is computed here.
 */
package gapwise.analysis.result;
