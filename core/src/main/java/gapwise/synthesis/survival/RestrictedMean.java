package gapwise.synthesis.survival;

/**
 * The mean time without the event up to a horizon: the area under the survival curve (Irwin, J Hyg
 * 1949;47:188; Karrison, J Am Stat Assoc 1987;82:1169).
 *
 * @param horizon where the area ends, above 0
 * @param estimate from 0 to the horizon, in the unit of the times
 * @param standardError from Greenwood's variance of the curve, at least 0; 0 when no event came
 *     before the horizon
 */
public record RestrictedMean(double horizon, double estimate, double standardError) {}
