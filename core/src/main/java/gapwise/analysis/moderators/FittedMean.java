package gapwise.analysis.moderators;

import gapwise.synthesis.regression.Predicted;
import java.util.function.Function;

/**
 * What a regression of any kind expects.
 *
 * @param at the mean where the terms have some values
 * @param tauSquared variance between studies about it
 */
record FittedMean(Function<double[], Predicted> at, double tauSquared) {}
