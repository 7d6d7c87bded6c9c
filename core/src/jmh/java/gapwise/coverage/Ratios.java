package gapwise.coverage;

import gapwise.effect.Measure;
import gapwise.effect.StudyData;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.pooling.Prediction;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/** What odds ratios and rate ratios have in common. */
final class Ratios {
  private static final double[] TAUS = {0, 0.5, 1};

  private static final double[] USUAL = {0.1, 0.3};

  private static final double[] MIDDLES = {1, 0.5};

  private Ratios() {}

  /** Makes the two groups of a study. */
  @FunctionalInterface
  interface Study<S extends StudyData> {
    S of(SplittableRandom random, double usual, double logRatio);
  }

  static <S extends StudyData> List<Way<DrawnEffects<S>>> ways(
      ExactLikelihood.Model model, Measure<S> measure) {
    List<Way<DrawnEffects<S>>> ways = new ArrayList<>();
    ways.add(
        new Way<>(
            "logarithms, Hartung-Knapp never narrower",
            drawn ->
                Pools.middle(
                    Pools.byEffects(
                        measure,
                        drawn.series(),
                        "hartung-knapp-never-narrower",
                        Prediction.Reference.T_K_MINUS_2))));
    ways.add(
        new Way<>(
            "exact likelihood, Student's t",
            drawn ->
                Pools.middle(
                    Pools.exact(
                        model, drawn.series(), true, Prediction.Reference.T_K_MINUS_2))));
    for (double scale : new double[] {0.5, 1}) {
      ways.add(
          new Way<>(
              "posterior, half-normal " + (scale == 1 ? "1" : String.valueOf(scale)),
              drawn -> Pools.posterior(model, drawn.series(), scale)));
    }
    return ways;
  }

  static <S extends StudyData> List<Scenario<DrawnEffects<S>>> scenarios(Study<S> study) {
    List<Scenario<DrawnEffects<S>>> all = new ArrayList<>();
    for (int series : Draws.SERIES) {
      for (int at = 0; at < USUAL.length; at++) {
        double usual = USUAL[at];
        double middle = MIDDLES[at];
        for (double tau : TAUS) {
          all.add(
              new Scenario<>(
                  series,
                  usual + " in the comparator, ratio " + middle,
                  OptionalDouble.of(tau),
                  random -> draw(study, random, series, usual, Math.log(middle), tau)));
        }
      }
    }
    return all;
  }

  private static <S extends StudyData> DrawnEffects<S> draw(
      Study<S> study,
      SplittableRandom random,
      int series,
      double usual,
      double middle,
      double tau) {
    List<S> drawn = new ArrayList<>();
    for (int i = 0; i < series; i++) {
      drawn.add(study.of(random, usual, middle + tau * random.nextGaussian()));
    }
    return new DrawnEffects<>(middle, tau, drawn, middle + tau * random.nextGaussian());
  }
}
