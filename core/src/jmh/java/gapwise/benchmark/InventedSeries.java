package gapwise.benchmark;

import gapwise.synthesis.heterogeneity.EffectSample;
import java.util.SplittableRandom;

/**
 * Series of patients drawn with a fixed seed: 5 to 60 patients, rates normal on the logit scale.
 */
record InventedSeries(int[] events, int[] totals) {
  static InventedSeries of(int series) {
    SplittableRandom random = new SplittableRandom(series);
    int[] events = new int[series];
    int[] totals = new int[series];
    for (int i = 0; i < series; i++) {
      totals[i] = random.nextInt(5, 61);
      double rate = 1 / (1 + Math.exp(-1.5 - 0.6 * random.nextGaussian()));
      for (int patient = 0; patient < totals[i]; patient++) {
        events[i] += random.nextDouble() < rate ? 1 : 0;
      }
    }
    return new InventedSeries(events, totals);
  }

  /** Logits, half an event added to arms without, or with only, events. */
  EffectSample logits() {
    double[] effects = new double[events.length];
    double[] variances = new double[events.length];
    for (int i = 0; i < events.length; i++) {
      double added = events[i] == 0 || events[i] == totals[i] ? 0.5 : 0;
      double with = events[i] + added;
      double without = totals[i] - events[i] + added;
      effects[i] = Math.log(with / without);
      variances[i] = 1 / with + 1 / without;
    }
    return EffectSample.of(effects, variances);
  }
}
