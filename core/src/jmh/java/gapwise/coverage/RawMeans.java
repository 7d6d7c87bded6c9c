package gapwise.coverage;

import gapwise.effect.ArmMean;
import gapwise.effect.Measure;
import gapwise.synthesis.pooling.Prediction;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * Means that may be negative, or scores: true means of centres are normal, and so are patients of
 * a centre. The unit is the middle standard deviation of patients, which is the same at all
 * centres or varies between them by a factor of up to 1.6 either way.
 */
final class RawMeans {
  private static final double[] TAUS = {0, 0.25, 0.5, 1};

  private static final double[] FACTORS = {1, 1.6};

  private static final double[] SCALES = {0.25, 0.5, 0.75, 1};

  private RawMeans() {}

  static Family<DrawnEffects<ArmMean>> family() {
    Measure<ArmMean> measure = Pools.measure("mean", "raw");
    List<Way<DrawnEffects<ArmMean>>> ways = new ArrayList<>();
    ways.add(
        new Way<>(
            "Hartung-Knapp never narrower",
            drawn ->
                Pools.middle(
                    Pools.byEffects(
                        measure,
                        drawn.series(),
                        "hartung-knapp-never-narrower",
                        Prediction.Reference.T_K_MINUS_2))));
    for (double scale : SCALES) {
      ways.add(
          new Way<>(
              "posterior, half-normal " + (scale == 1 ? "1" : String.valueOf(scale)) + " SD",
              drawn ->
                  Pools.posterior(
                      Pools.sample(measure, drawn.series()),
                      scale * ArmMean.pooledDeviation(drawn.series()).orElseThrow(),
                      false)));
    }
    List<Scenario<DrawnEffects<ArmMean>>> scenarios = new ArrayList<>();
    for (int series : Draws.SERIES) {
      for (double factor : FACTORS) {
        for (double tau : TAUS) {
          scenarios.add(
              new Scenario<>(
                  series,
                  factor == 1 ? "SDs alike" : "SDs differ",
                  OptionalDouble.of(tau),
                  random -> draw(random, series, factor, tau)));
        }
      }
    }
    return new Family<>(
        "raw-means",
        2,
        Family.Size.DEVIATIONS,
        List.of(Target.MIDDLE, Target.FURTHER),
        ways,
        scenarios);
  }

  private static DrawnEffects<ArmMean> draw(
      SplittableRandom random, int series, double factor, double tau) {
    List<ArmMean> drawn = new ArrayList<>();
    double logs = Math.log(factor);
    for (int i = 0; i < series; i++) {
      double centre = tau * random.nextGaussian();
      double sd = Math.exp(logs * (2 * random.nextDouble() - 1));
      drawn.add(
          Draws.mean(Draws.patients(random), () -> centre + sd * random.nextGaussian()));
    }
    return new DrawnEffects<>(0, tau, drawn, tau * random.nextGaussian());
  }
}
