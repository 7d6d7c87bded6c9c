package gapwise.synthesis.multiverse;

import gapwise.effect.BackTransform;
import gapwise.synthesis.heterogeneity.EffectSample;
import java.util.List;

/**
 * Effects of some rows.
 *
 * @param sample those that can be pooled
 * @param back the way to what people read
 * @param rows the places of those that can be pooled, rising
 * @param ifEmpty the code that says why no effect is left, should none be
 */
public record Body(EffectSample sample, BackTransform back, List<Integer> rows, String ifEmpty) {
  public Body {
    rows = List.copyOf(rows);
  }
}
