package gapwise.synthesis.multiverse;

import gapwise.effect.BackTransform;
import gapwise.synthesis.heterogeneity.EffectSample;

/**
 * Effects of some rows.
 *
 * @param sample those that can be pooled
 * @param back the way to what people read
 * @param ifEmpty the code that says why no effect is left, should none be
 */
public record Body(EffectSample sample, BackTransform back, String ifEmpty) {}
