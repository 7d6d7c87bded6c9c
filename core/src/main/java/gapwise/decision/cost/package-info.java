/**
 * Costs and effects over time: a cohort that moves between states cycle by cycle, laws for what is
 * uncertain, what many draws say of costs against effects, and one documented model of the
 * reconstruction of bone.
 *
 * <p>Start at {@link gapwise.decision.cost.CostModel} for that model, at {@link
 * gapwise.decision.cost.Chain} for any other, at {@link gapwise.decision.cost.CostsAndEffects} for
 * draws. No price is built in: every amount of money comes from whoever asks.
 */
package gapwise.decision.cost;
