/**
 * Measures that compare any number of arms of a study, each arm in a row of its own, with the
 * covariance that a shared arm makes. One measure one class, listed in {@link
 * gapwise.effect.arms.MultiArmMeasures}.
 */
package gapwise.effect.arms;
