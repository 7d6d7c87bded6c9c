package gapwise.synthesis.bayes;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.effect.ArmCounts;
import gapwise.effect.Interval;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.MarginalLikelihood;
import gapwise.synthesis.likelihood.MeanOverStudies;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is known under one prior of tau serves under others. */
class AnotherPriorTest {
  /** Five of a million; what is told has three digits. */
  private static final double CLOSE = 5e-6;

  /** Nearly full, so that their own logits, each a little off zero and all, look alike. */
  private static MarginalLikelihood nearlyFull(int series) {
    return MarginalLikelihood.of(
        ExactLikelihood.Model.PROPORTION,
        IntStream.range(0, series)
            .map(i -> i % 200)
            .mapToObj(
                i -> {
                  int total = 5 + 37 * i % 60;
                  return new ArmCounts(total - 7 * i * i % Math.max(1, total / 3), total);
                })
            .toList());
  }

  private static CountsPosterior posterior(MarginalLikelihood likelihood, TauPrior prior) {
    return CountsPosterior.of(likelihood, new CentrePrior.UniformShare(), prior).orElseThrow();
  }

  private static double[] limits(Marginal marginal) {
    Interval limits = marginal.equalTailed(0.95);
    return new double[] {limits.lower(), marginal.median(), limits.upper()};
  }

  /** Dense grids by NumPy: many_series_posterior.py beside the tests. */
  @Test
  void twoHundredNearlyFullSeriesAgreeWithDenseGrids() {
    CountsPosterior wide = posterior(nearlyFull(200), new TauPrior.HalfNormal(1));
    assertArrayEquals(new double[] {1.807626, 1.935201, 2.075449}, limits(wide.centre()), CLOSE);
    assertArrayEquals(new double[] {0.555504, 0.682238, 0.830665}, limits(wide.tau()), CLOSE);

    CountsPosterior narrow = wide.under(new TauPrior.HalfNormal(0.25)).orElseThrow();
    assertArrayEquals(new double[] {1.797870, 1.919683, 2.052313}, limits(narrow.centre()), CLOSE);
    assertArrayEquals(new double[] {0.523145, 0.638690, 0.770233}, limits(narrow.tau()), CLOSE);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 5, 12, 40, 150})
  void theWayThroughAnotherPriorLeadsToTheSame(int series) {
    MarginalLikelihood likelihood = nearlyFull(series);
    CountsPosterior first = posterior(likelihood, new TauPrior.HalfNormal(1));
    for (TauPrior prior :
        List.of(
            new TauPrior.HalfNormal(0.1),
            new TauPrior.HalfNormal(0.5),
            new TauPrior.HalfNormal(1),
            new TauPrior.HalfNormal(2),
            new TauPrior.Uniform(0, 4),
            new TauPrior.Uniform(0.5, 1.5))) {
      CountsPosterior direct = posterior(likelihood, prior);
      CountsPosterior through = first.under(prior).orElseThrow();
      assertArrayEquals(
          limits(direct.centre()), limits(through.centre()), CLOSE, () -> "centre, " + prior);
      assertArrayEquals(limits(direct.tau()), limits(through.tau()), CLOSE, () -> "tau, " + prior);
      assertArrayEquals(
          limits(direct.predictive()),
          limits(through.predictive()),
          CLOSE,
          () -> "further, " + prior);
      assertArrayEquals(
          limits(direct.average(MeanOverStudies::logitOfProportion)),
          limits(through.average(MeanOverStudies::logitOfProportion)),
          CLOSE,
          () -> "average, " + prior);
    }
  }

  /**
   * Two thousand series that are a prior apart from what it says: its top lies far out of reach.
   */
  @Test
  void aPriorThatManySeriesDisagreeWithIsOverruled() {
    MarginalLikelihood likelihood = nearlyFull(2_000);
    CountsPosterior wide = posterior(likelihood, new TauPrior.HalfNormal(1));
    TauPrior narrow = new TauPrior.HalfNormal(0.05);
    CountsPosterior direct = posterior(likelihood, narrow);
    assertArrayEquals(
        limits(direct.centre()), limits(wide.under(narrow).orElseThrow().centre()), CLOSE);
    assertEquals(0.95, within(direct.centre()), 1e-6);
    assertEquals(0.95, within(direct.tau()), 1e-6);
    assertTrue(direct.tau().equalTailed(0.95).lower() > 6.2 * 0.05);
  }

  private static double within(Marginal marginal) {
    Interval limits = marginal.equalTailed(0.95);
    return marginal.below(limits.upper()) - marginal.below(limits.lower());
  }

  /** A hundred times the series leave a tenth of the width, however narrow that has become. */
  @Test
  void twentyThousandSeriesLeaveATenthOfTheWidth() {
    CountsPosterior few = posterior(nearlyFull(200), new TauPrior.HalfNormal(1));
    CountsPosterior many = posterior(nearlyFull(20_000), new TauPrior.HalfNormal(1));
    assertEquals(1, many.centre().below(1e3), 1e-6);
    assertEquals(0.1, width(many.centre()) / width(few.centre()), 0.01);
    assertEquals(0.1, width(many.tau()) / width(few.tau()), 0.01);
  }

  private static double width(Marginal marginal) {
    Interval limits = marginal.equalTailed(0.95);
    return limits.upper() - limits.lower();
  }

  /** The first is not changed by what is asked of it. */
  @Test
  void whatWasKnownStaysAsItWas() {
    CountsPosterior first = posterior(nearlyFull(5), new TauPrior.HalfNormal(1));
    double before = first.centre().median();
    assertTrue(first.under(new TauPrior.HalfNormal(3)).isPresent());
    assertEquals(before, first.centre().median());
  }
}
