/**
 * The task {@code trial}: how many patients a trial of two arms needs.
 *
 * <p>Start at {@link gapwise.analysis.trial.TrialTask}.
 */
package gapwise.analysis.trial;
