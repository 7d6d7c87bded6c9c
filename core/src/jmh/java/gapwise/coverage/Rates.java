package gapwise.coverage;

import gapwise.effect.ArmRate;
import gapwise.effect.Interval;
import gapwise.synthesis.bayes.CentrePrior;
import gapwise.synthesis.bayes.CountsPosterior;
import gapwise.synthesis.bayes.TauPrior;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.MarginalLikelihood;
import gapwise.synthesis.pooling.Prediction;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * Events that a patient can have several of, such as further operations, as a rate for each patient:
 * 10, 50 or 200 in 100 patients of the middle centre. Within a centre events are Poisson.
 */
final class Rates {
  private static final double[] TAUS = {0, 0.5, 1};

  private static final double[] MIDDLES = {0.1, 0.5, 2};

  private Rates() {}

  static Family<DrawnEffects<ArmRate>> family() {
    List<Way<DrawnEffects<ArmRate>>> ways = new ArrayList<>();
    ways.add(
        new Way<>(
            "logarithms, Hartung-Knapp never narrower",
            drawn ->
                Pools.carried(
                    Pools.byEffects(
                        Pools.measure("incidence-rate", "log"),
                        drawn.series(),
                        "hartung-knapp-never-narrower",
                        Prediction.Reference.T_K_MINUS_2))));
    ways.add(
        new Way<>(
            "exact likelihood, Student's t",
            drawn ->
                Pools.carried(
                    Pools.exact(
                        ExactLikelihood.Model.RATE,
                        drawn.series(),
                        true,
                        Prediction.Reference.T_K_MINUS_2))));
    for (double scale : new double[] {0.5, 0.75, 1}) {
      ways.add(
          new Way<>(
              "posterior, root prior, half-normal " + (scale == 1 ? "1" : String.valueOf(scale)),
              drawn -> posterior(drawn.series(), new CentrePrior.JeffreysRate(), scale)));
    }
    ways.add(
        new Way<>(
            "posterior, every rate alike, half-normal 0.5",
            drawn -> posterior(drawn.series(), new CentrePrior.UniformRate(), 0.5)));
    return new Family<>(
        "rates", 1, Family.Size.FACTOR, List.of(Target.values()), ways, scenarios());
  }

  private static Map<Target, Interval> posterior(
      List<ArmRate> series, CentrePrior centre, double scale) {
    CountsPosterior posterior =
        CountsPosterior.of(
                MarginalLikelihood.of(ExactLikelihood.Model.RATE, series),
                centre,
                new TauPrior.HalfNormal(scale))
            .orElseThrow(() -> new IllegalStateException(series + " " + centre + " " + scale));
    Map<Target, Interval> found = new EnumMap<>(Target.class);
    found.put(
        Target.AVERAGE,
        posterior.average((middle, tau) -> middle + tau * tau / 2).equalTailed(Way.LEVEL));
    found.put(Target.MIDDLE, posterior.centre().equalTailed(Way.LEVEL));
    found.put(Target.FURTHER, posterior.predictive().equalTailed(Way.LEVEL));
    return found;
  }

  private static List<Scenario<DrawnEffects<ArmRate>>> scenarios() {
    List<Scenario<DrawnEffects<ArmRate>>> all = new ArrayList<>();
    for (int series : Draws.SERIES) {
      for (double middle : MIDDLES) {
        for (double tau : TAUS) {
          all.add(
              new Scenario<>(
                  series,
                  middle + " a patient",
                  OptionalDouble.of(tau),
                  random -> draw(random, series, Math.log(middle), tau)));
        }
      }
    }
    return all;
  }

  private static DrawnEffects<ArmRate> draw(
      SplittableRandom random, int series, double middle, double tau) {
    List<ArmRate> drawn = new ArrayList<>();
    for (int i = 0; i < series; i++) {
      drawn.add(
          Draws.events(
              random, Draws.patients(random), Math.exp(middle + tau * random.nextGaussian())));
    }
    return new DrawnEffects<>(middle, tau, drawn, middle + tau * random.nextGaussian());
  }
}
