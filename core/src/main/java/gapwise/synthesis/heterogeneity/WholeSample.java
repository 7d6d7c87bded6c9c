package gapwise.synthesis.heterogeneity;

import java.util.function.IntToDoubleFunction;

/**
 * What the sums without any one study are taken from.
 *
 * @param centre mean of the effects
 * @param sample all studies, effects measured from the centre, so that effects far from 0 cost no
 *     digits
 * @param sums weighted sums over tau squared
 * @param unweightedSquares squared distances from the centre
 * @param variances sum of the variances
 * @param largestVariances the largest two variances
 * @param largestEffects the largest two sizes of effects
 */
public record WholeSample(
    double centre,
    EffectSample sample,
    SumsOverTau sums,
    double unweightedSquares,
    double variances,
    Largest largestVariances,
    Largest largestEffects) {

  /** The largest of some numbers, where it stands, and the next. */
  record Largest(int place, double first, double second) {
    public static Largest of(int count, IntToDoubleFunction number) {
      int place = 0;
      double second = 0;
      for (int i = 1; i < count; i++) {
        double one = number.applyAsDouble(i);
        double first = number.applyAsDouble(place);
        if (one > first) {
          second = Math.max(second, first);
          place = i;
        } else {
          second = Math.max(second, one);
        }
      }
      return new Largest(place, number.applyAsDouble(place), second);
    }

    /** The largest without the one at a place. */
    double without(int omitted) {
      return omitted == place ? second : first;
    }
  }

  public static WholeSample of(EffectSample sample) {
    int k = sample.size();
    double mean = sample.sum(sample::effect) / k;
    EffectSample shifted = sample.from(mean);
    return new WholeSample(
        mean,
        shifted,
        new SumsOverTau(shifted),
        shifted.sum(i -> shifted.effect(i) * shifted.effect(i)),
        sample.sum(sample::variance),
        Largest.of(k, sample::variance),
        Largest.of(k, i -> Math.abs(sample.effect(i))));
  }
}
