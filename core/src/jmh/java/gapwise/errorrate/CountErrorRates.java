package gapwise.errorrate;

import gapwise.effect.ArmCounts;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import gapwise.synthesis.likelihood.CountRegression;
import gapwise.synthesis.likelihood.CountRegressionFit;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.LikelihoodLimits;
import gapwise.synthesis.likelihood.LikelihoodRatioTest;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Prediction;
import gapwise.synthesis.regression.DesignMatrix;
import gapwise.synthesis.regression.Regression;
import gapwise.synthesis.regression.RegressionSettings;
import gapwise.synthesis.regression.RegressionTest;
import gapwise.synthesis.regression.WaldTest;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * Draws series of patients whose shares do not depend on a moderator, and counts how often a test
 * at 5 % says that they do: by the exact likelihood, and by logits with half events. The same seed
 * gives the same table.
 */
public final class CountErrorRates {
  /** Any number would do; this one is written into the page. */
  private static final long SEED = 20261;

  private static final double NOMINAL = 0.05;
  private static final int[] SERIES = {4, 5, 6, 8, 10, 20};
  private static final double[] SHARES = {0.5, 0.9};
  private static final double[] SPREADS = {0, 0.3, 0.6, 1};

  private CountErrorRates() {}

  /** Series with one moderator. */
  private record Drawn(List<ArmCounts> arms, DesignMatrix design) {}

  /** The ways to test, in the order of the table. */
  private enum Way {
    STUDENT_T("exact likelihood, t-k-minus-p"),
    CHI_SQUARED("exact likelihood, normal"),
    KNAPP_HARTUNG("logits with half events, hartung-knapp");

    private final String words;

    Way(String words) {
      this.words = words;
    }

    OptionalDouble pValue(Drawn drawn) {
      return this == KNAPP_HARTUNG ? byEffects(drawn) : byCounts(drawn, this == STUDENT_T);
    }
  }

  /**
   * Prints the table.
   *
   * @param arguments replicates of a world
   */
  public static void main(String[] arguments) {
    int replicates = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    out.println("| share, test | 4 | 5 | 6 | 8 | 10 | 20 |");
    for (double share : SHARES) {
      for (Way way : Way.values()) {
        StringBuilder line = new StringBuilder("| " + share + ", " + way.words + " |");
        for (int series : SERIES) {
          line.append(cell(way, share, series, replicates));
        }
        out.println(line);
      }
    }
  }

  /** The least and the greatest rate over the spreads. */
  private static String cell(Way way, double share, int series, int replicates) {
    double least = Double.POSITIVE_INFINITY;
    double greatest = Double.NEGATIVE_INFINITY;
    for (double spread : SPREADS) {
      SplittableRandom random = new SplittableRandom(SEED + series);
      int tests = 0;
      int rejected = 0;
      for (int replicate = 0; replicate < replicates; replicate++) {
        OptionalDouble found = way.pValue(draw(random.split(), share, series, spread));
        tests += found.isPresent() ? 1 : 0;
        rejected += found.orElse(1) < NOMINAL ? 1 : 0;
      }
      least = Math.min(least, 100.0 * rejected / tests);
      greatest = Math.max(greatest, 100.0 * rejected / tests);
    }
    return String.format(Locale.ROOT, " %.1f to %.1f |", least, greatest);
  }

  private static Drawn draw(SplittableRandom random, double share, int series, double spread) {
    List<ArmCounts> arms = new ArrayList<>();
    List<double[]> rows = new ArrayList<>();
    for (int i = 0; i < series; i++) {
      int total = (int) Math.round(5 * Math.pow(12, random.nextDouble()));
      double logit = Math.log(share / (1 - share)) + spread * normal(random);
      double own = 1 / (1 + Math.exp(-logit));
      int events = 0;
      for (int j = 0; j < total; j++) {
        events += random.nextDouble() < own ? 1 : 0;
      }
      arms.add(new ArmCounts(events, total));
      rows.add(new double[] {1, i});
    }
    return new Drawn(arms, DesignMatrix.of(List.of(DesignMatrix.INTERCEPT, "x"), rows));
  }

  /** Box and Muller's way. */
  private static double normal(SplittableRandom random) {
    return Math.sqrt(-2 * Math.log(1 - random.nextDouble()))
        * Math.cos(2 * Math.PI * random.nextDouble());
  }

  private static OptionalDouble byCounts(Drawn drawn, boolean studentT) {
    CountRegression regression =
        new ExactLikelihood(ExactLikelihood.Model.PROPORTION, 25)
            .regression(
                drawn.arms(),
                drawn.design(),
                new LikelihoodLimits(1 - NOMINAL, studentT, Optional.empty()));
    if (!(regression instanceof CountRegressionFit fit)) {
      return OptionalDouble.empty();
    }
    Optional<LikelihoodRatioTest> test = fit.moderatorTest();
    return test.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(test.get().pValue());
  }

  /** Half an event to both sides of a series where nobody or everybody had it. */
  private static OptionalDouble byEffects(Drawn drawn) {
    List<Double> logits = new ArrayList<>();
    List<Double> variances = new ArrayList<>();
    for (ArmCounts arm : drawn.arms()) {
      double half = arm.events() == 0 || arm.nonEvents() == 0 ? 0.5 : 0;
      logits.add(Math.log((arm.events() + half) / (arm.nonEvents() + half)));
      variances.add(1 / (arm.events() + half) + 1 / (arm.nonEvents() + half));
    }
    PoolingSettings pooling =
        new PoolingSettings(
            TauSquaredEstimators.named("restricted-maximum-likelihood"),
            MeanIntervals.normal(),
            new Prediction(Prediction.Reference.T_K_MINUS_2, Prediction.Error.SUM_OF_WEIGHTS),
            TauSquaredInterval.Q_PROFILE,
            1 - NOMINAL);
    Optional<WaldTest> test =
        Regression.of(
                EffectSample.of(logits, variances),
                drawn.design(),
                new RegressionSettings(pooling, RegressionTest.HARTUNG_KNAPP))
            .fit()
            .flatMap(Regression.Fit::moderatorTest);
    return test.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(test.get().pValue());
  }
}
