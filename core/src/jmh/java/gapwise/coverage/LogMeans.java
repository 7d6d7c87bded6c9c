package gapwise.coverage;

import gapwise.effect.ArmMean;
import gapwise.effect.Measure;
import gapwise.synthesis.pooling.Prediction;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * Means of what cannot be negative, such as months to union: the log of a centre's true mean is
 * normal about that of the middle centre, 9 months, and patients are log-normal about the mean of
 * their centre.
 */
final class LogMeans {
  private static final double[] TAUS = {0, 0.2, 0.5};

  private static final double[] DEVIATIONS = {0.3, 0.8};

  private static final double[] SCALES = {0.25, 0.35, 0.5, 0.75, 1};

  private static final double MIDDLE = Math.log(9);

  private LogMeans() {}

  static Family<DrawnEffects<ArmMean>> family() {
    Measure<ArmMean> measure = Pools.measure("mean", "log");
    List<Way<DrawnEffects<ArmMean>>> ways = new ArrayList<>();
    ways.add(
        new Way<>(
            "logarithms, Hartung-Knapp never narrower",
            drawn ->
                Pools.carried(
                    Pools.byEffects(
                        measure,
                        drawn.series(),
                        "hartung-knapp-never-narrower",
                        Prediction.Reference.T_K_MINUS_2))));
    for (double scale : SCALES) {
      ways.add(
          new Way<>(
              "posterior, half-normal " + (scale == 1 ? "1" : String.valueOf(scale)),
              drawn -> Pools.posterior(Pools.sample(measure, drawn.series()), scale, true)));
    }
    List<Scenario<DrawnEffects<ArmMean>>> scenarios = new ArrayList<>();
    for (int series : Draws.SERIES) {
      for (double deviation : DEVIATIONS) {
        for (double tau : TAUS) {
          scenarios.add(
              new Scenario<>(
                  series,
                  "SD/mean " + deviation,
                  OptionalDouble.of(tau),
                  random -> draw(random, series, deviation, tau)));
        }
      }
    }
    return new Family<>(
        "log-means", 5, Family.Size.FACTOR, List.of(Target.values()), ways, scenarios);
  }

  private static DrawnEffects<ArmMean> draw(
      SplittableRandom random, int series, double deviation, double tau) {
    List<ArmMean> drawn = new ArrayList<>();
    double square = Math.log1p(deviation * deviation);
    for (int i = 0; i < series; i++) {
      double centre = MIDDLE + tau * random.nextGaussian() - square / 2;
      drawn.add(
          Draws.mean(
              Draws.patients(random),
              () -> Math.exp(centre + Math.sqrt(square) * random.nextGaussian())));
    }
    return new DrawnEffects<>(MIDDLE, tau, drawn, MIDDLE + tau * random.nextGaussian());
  }
}
