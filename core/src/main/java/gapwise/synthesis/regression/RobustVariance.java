package gapwise.synthesis.regression;

import static gapwise.sentence.Sentences.say;

import gapwise.numeric.SymmetricMatrix;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Standard errors that stay right when effects within a cluster depend on each other in a way the
 * weights do not know: the sandwich M (sum X'W A e e'A'W X) M over clusters, M = (X'WX)^-1, e the
 * residuals (Hedges, Tipton and Johnson, Res Synth Methods 2010;1:39). A coefficient that a single
 * cluster tells, or whose clusters do not differ at all, has no such standard error and is left
 * out.
 *
 * @param clusters how many, m
 * @param coefficients those with robust standard errors
 * @param moderatorTest of all terms but the intercept, if there are some
 * @param warnings what a reader must know
 */
public record RobustVariance(
    int clusters,
    List<RobustCoefficient> coefficients,
    Optional<RobustTest> moderatorTest,
    List<Problem> warnings) {

  /** How the sandwich allows for few clusters, m of them with p coefficients. */
  public enum Correction {
    /**
     * A by bias-reduced linearisation, t with Satterthwaite's degrees of freedom: {@link
     * ClusterInfluence}, {@link SandwichDegrees}.
     */
    CR2,
    /** Times m/(m - p), A nothing; t on m - p. */
    CR1,
    /** Nothing; t on m - p. */
    CR0;
  }

  /**
   * Below four degrees of freedom such tests are not to be trusted, whatever the correction:
   * Tipton, Psychol Methods 2015;20:375.
   */
  private static final double FEWEST_DEGREES = 4;

  /**
   * With fewer clusters the simple sandwiches reject more than 7 of 100 true hypotheses at 5 %: up
   * to 20 by our simulation, docs/methods/error-rates.md; from there on common practice, no source.
   */
  private static final int FEW_FOR_THE_SIMPLE = 40;

  /** A robust standard error below this share of the model's is the rounding of one that is 0. */
  private static final double ROUNDING = 1e-9;

  public RobustVariance {
    coefficients = List.copyOf(coefficients);
    warnings = List.copyOf(warnings);
  }

  /**
   * Of a fit.
   *
   * @param level of the intervals, above 0 and below 1
   */
  public static RobustVariance of(ClusteredFit fit, Correction correction, double level) {
    Map<String, List<Integer>> clusters = fit.placesOfClusters();
    if (clusters.size() <= fit.terms()) {
      return nothing(
          clusters.size(),
          "too-few-studies",
          say(
              "analysis.robust-left-out",
              Map.of("coefficients", fit.terms(), "clusters", clusters.size())));
    }
    boolean adjustable =
        clusters.values().stream().allMatch(one -> one.size() <= ClusterInfluence.MOST_ROWS);
    if (correction == Correction.CR2 && !adjustable) {
      return nothing(
          clusters.size(),
          "cluster-too-large",
          say("analysis.cluster-too-large", Map.of("rows", ClusterInfluence.MOST_ROWS)));
    }
    return new Sandwich(fit, clusters, correction, adjustable).told(level);
  }

  private static RobustVariance nothing(int clusters, String code, String why) {
    return new RobustVariance(
        clusters, List.of(), Optional.empty(), List.of(new Problem("", code, why)));
  }

  /** One sandwich in the making. */
  private static final class Sandwich {
    private final ClusteredFit fit;
    private final Map<String, List<Integer>> clusters;
    private final Correction correction;
    private final RealMatrix variance;
    private final RealMatrix root;
    private final Optional<SandwichDegrees> degrees;
    private final List<Problem> warnings = new ArrayList<>();

    Sandwich(
        ClusteredFit fit,
        Map<String, List<Integer>> clusters,
        Correction correction,
        boolean adjustable) {
      this.fit = fit;
      this.clusters = clusters;
      this.correction = correction;
      this.root = rootOf(fit.inverseInformation());
      List<ClusterInfluence> adjusted =
          adjustable
              ? clusters.values().stream().map(at -> ClusterInfluence.adjusted(fit, at)).toList()
              : List.of();
      this.degrees =
          adjustable ? Optional.of(new SandwichDegrees(adjusted, root)) : Optional.empty();
      this.variance =
          variance(
              correction == Correction.CR2
                  ? adjusted
                  : clusters.values().stream().map(at -> ClusterInfluence.plain(fit, at)).toList());
    }

    private RealMatrix variance(List<ClusterInfluence> influences) {
      double factor =
          correction == Correction.CR1
              ? (double) clusters.size() / (clusters.size() - fit.terms())
              : 1;
      RealMatrix sum = new Array2DRowRealMatrix(fit.terms(), fit.terms());
      for (ClusterInfluence one : influences) {
        RealMatrix score = new Array2DRowRealMatrix(one.score());
        sum = sum.add(score.multiply(score.transpose()).scalarMultiply(factor));
      }
      return sum;
    }

    /** L with L L' = M, by the correlations, so that units of terms do not matter. */
    private static RealMatrix rootOf(RealMatrix matrix) {
      int p = matrix.getRowDimension();
      double[] errors = new double[p];
      for (int k = 0; k < p; k++) {
        errors[k] = Math.sqrt(matrix.getEntry(k, k));
      }
      RealMatrix correlations = matrix.copy();
      for (int a = 0; a < p; a++) {
        for (int b = 0; b < p; b++) {
          correlations.multiplyEntry(a, b, 1 / errors[a] / errors[b]);
        }
      }
      RealMatrix root = SymmetricMatrix.of(correlations).root();
      for (int a = 0; a < p; a++) {
        for (int b = 0; b < p; b++) {
          root.multiplyEntry(a, b, errors[a]);
        }
      }
      return root;
    }

    RobustVariance told(double level) {
      Map<Integer, String> alone = ToldByOneCluster.of(fit, clusters, root);
      List<RobustCoefficient> coefficients = new ArrayList<>();
      List<Integer> tested = new ArrayList<>();
      double fewest = clusters.size();
      for (int k = 0; k < fit.terms(); k++) {
        String term = fit.design().terms().get(k);
        double error = Math.sqrt(variance.getEntry(k, k));
        double model = Math.sqrt(fit.modelCovariance().get(k).get(k));
        String only = alone.get(k);
        if (only != null) {
          warn(
              "told-by-one-cluster",
              say("analysis.told-by-one-cluster", Map.of("term", term, "cluster", only)));
        } else if (!(error > ROUNDING * model && error < Double.MAX_VALUE)) {
          warn("zero-width-interval", say("analysis.robust-variance-zero", Map.of("term", term)));
        } else {
          double satterthwaite = satterthwaite(k);
          fewest = Math.min(fewest, satterthwaite);
          coefficients.add(
              RobustCoefficient.of(
                  term,
                  fit.estimates().get(k),
                  error,
                  correction == Correction.CR2 ? satterthwaite : clusters.size() - fit.terms(),
                  level));
          if (!term.equals(DesignMatrix.INTERCEPT)) {
            tested.add(k);
          }
        }
      }
      return told(coefficients, tested, fewest);
    }

    private double satterthwaite(int term) {
      double whole = clusters.size() - fit.terms();
      double found = degrees.isPresent() ? degrees.get().ofCoefficient(term) : whole;
      return found > 0 && found < Double.MAX_VALUE ? found : whole;
    }

    private RobustVariance told(
        List<RobustCoefficient> coefficients, List<Integer> tested, double fewest) {
      Optional<RobustTest> test = test(tested);
      if (!coefficients.isEmpty() && fewest < FEWEST_DEGREES) {
        warn(
            "few-clusters",
            say(
                "analysis.few-clusters",
                Map.of("degrees", String.format(Locale.ROOT, "%.1f", fewest))));
      }
      if (!coefficients.isEmpty()
          && correction != Correction.CR2
          && clusters.size() < FEW_FOR_THE_SIMPLE) {
        warn(
            "error-rate-not-held",
            say("analysis.simple-sandwich", Map.of("clusters", clusters.size())));
      }
      return new RobustVariance(clusters.size(), coefficients, test, warnings);
    }

    private Optional<RobustTest> test(List<Integer> tested) {
      List<Integer> moderators =
          IntStream.range(0, fit.terms())
              .filter(k -> !fit.design().terms().get(k).equals(DesignMatrix.INTERCEPT))
              .boxed()
              .toList();
      if (moderators.isEmpty() || correction != Correction.CR2) {
        return Optional.empty();
      }
      Optional<RobustTest> test =
          tested.equals(moderators)
              ? RobustTest.of(fit, moderators, variance, degrees.orElseThrow())
              : Optional.empty();
      if (test.isEmpty()) {
        warn("no-robust-test", say("analysis.no-robust-test"));
      }
      return test;
    }

    private void warn(String code, String message) {
      warnings.add(new Problem("", code, message));
    }
  }
}
