/**
 * Ways of treatment weighed against each other when neither outcomes nor wishes are certain
 * (stochastic multi-criteria acceptability: Lahdelma and Salminen 2001), and what a threshold that
 * matters says of a difference or a share.
 *
 * <p>Start at {@link gapwise.decision.weighing.Weighing}, {@link
 * gapwise.decision.weighing.Difference} and {@link gapwise.decision.weighing.OneShare}. Nothing
 * here knows bones, records or figures: outcomes come in as draws.
 */
package gapwise.decision.weighing;
