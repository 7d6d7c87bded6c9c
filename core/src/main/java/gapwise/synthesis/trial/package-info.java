/**
 * How many patients a trial of two arms needs. Knows proportions and means, no plan and no bones.
 *
 * <p>Start at {@link gapwise.synthesis.trial.TrialOfProportions} and {@link
 * gapwise.synthesis.trial.TrialOfMeans}; what is demanded of the trial is {@link
 * gapwise.synthesis.trial.Demands}. How widely patients differ is taken from published groups by
 * {@link gapwise.synthesis.trial.CommonSpread}.
 */
package gapwise.synthesis.trial;
