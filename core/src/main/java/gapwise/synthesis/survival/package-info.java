/**
 * Times until an event: patients' times put back together from a published curve, curves and
 * restricted means from patients' times, two groups compared, curves of several studies pooled.
 *
 * <p>Start at {@link gapwise.synthesis.survival.CurveReconstruction} with a published curve, at
 * {@link gapwise.synthesis.survival.KaplanMeier} with patients' times. Reading tables and plans
 * does not belong here.
 */
package gapwise.synthesis.survival;
