package gapwise.synthesis.multilevel;

import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.regression.ClusteredFit;
import gapwise.synthesis.regression.Coefficient;
import gapwise.synthesis.regression.DesignMatrix;
import gapwise.synthesis.regression.Obstacles;
import gapwise.synthesis.regression.RobustVariance;
import gapwise.synthesis.regression.WaldTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Effects in clusters explained by moderators.
 *
 * @param design the terms
 * @param fit the model; empty if its coefficients cannot be told
 * @param coefficients one for each term
 * @param moderatorTest of all terms but the intercept
 * @param rSquared share of the variance between and within clusters explained, 0 to 1
 * @param warnings what a reader must know
 */
public record ThreeLevelRegression(
    DesignMatrix design,
    Optional<ThreeLevelFit> fit,
    List<Coefficient> coefficients,
    Optional<WaldTest> moderatorTest,
    OptionalDouble rSquared,
    List<Problem> warnings) {
  public ThreeLevelRegression {
    coefficients = List.copyOf(coefficients);
    warnings = List.copyOf(warnings);
  }

  /**
   * Fits; never throws for a sample, clusters and a design of as many rows.
   *
   * @param clusters of each effect
   * @param restricted whether variances have the highest restricted likelihood
   * @param level of intervals, above 0 and below 1
   * @param limits how intervals and tests are made
   */
  public static ThreeLevelRegression of(
      EffectSample sample,
      DesignMatrix design,
      List<String> clusters,
      boolean restricted,
      double level,
      ClusterLimits limits) {
    Optional<Problem> not = Obstacles.of(sample, design);
    if (not.isPresent()) {
      return without(design, not.get());
    }
    try {
      ThreeLevelFit fit =
          ThreeLevelModel.fit(ClusteredRows.of(sample, clusters, columns(design)), restricted);
      return told(sample, design, clusters, fit, level, limits);
    } catch (DependentColumnsException dependent) {
      return without(
          design,
          new Problem(
              "",
              "number-out-of-range",
              "effects, variances and moderators differ by more powers of ten than can be reckoned"
                  + " with, so nothing is fitted; check the units of the data"));
    }
  }

  private static ThreeLevelRegression without(DesignMatrix design, Problem why) {
    return new ThreeLevelRegression(
        design,
        Optional.empty(),
        List.of(),
        Optional.empty(),
        OptionalDouble.empty(),
        List.of(why));
  }

  private static ThreeLevelRegression told(
      EffectSample sample,
      DesignMatrix design,
      List<String> clusters,
      ThreeLevelFit fit,
      double level,
      ClusterLimits limits) {
    int p = design.columns();
    double[] estimates = new double[p];
    double[][] covariance = new double[p][p];
    List<Coefficient> coefficients = new ArrayList<>();
    for (int i = 0; i < p; i++) {
      estimates[i] = fit.coefficient(i);
      for (int j = 0; j < p; j++) {
        covariance[i][j] = fit.covariance(i, j);
      }
      coefficients.add(
          Coefficient.of(
              design.terms().get(i),
              estimates[i],
              Math.sqrt(covariance[i][i]),
              limits.reference(fit),
              level));
    }
    List<Integer> moderators =
        IntStream.range(0, p)
            .filter(i -> !design.terms().get(i).equals(DesignMatrix.INTERCEPT))
            .boxed()
            .toList();
    return new ThreeLevelRegression(
        design,
        Optional.of(fit),
        coefficients,
        WaldTest.of(estimates, covariance, moderators, limits.degreesOfFreedom(fit)),
        rSquared(sample, clusters, fit),
        ThreeLevelPooling.warnings(fit));
  }

  private static OptionalDouble rSquared(
      EffectSample sample, List<String> clusters, ThreeLevelFit fit) {
    if (fit.totalVariance().isEmpty()) {
      return OptionalDouble.empty();
    }
    OptionalDouble without =
        ThreeLevelModel.fit(ClusteredRows.of(sample, clusters), fit.restricted()).totalVariance();
    return without.orElse(0) > 0
        ? OptionalDouble.of(
            Math.max(0, 1 - fit.totalVariance().getAsDouble() / without.getAsDouble()))
        : OptionalDouble.empty();
  }

  private static List<double[]> columns(DesignMatrix design) {
    List<double[]> columns = new ArrayList<>();
    for (int j = 0; j < design.columns(); j++) {
      double[] column = new double[design.rows()];
      for (int i = 0; i < column.length; i++) {
        column[i] = design.value(i, j);
      }
      columns.add(column);
    }
    return columns;
  }

  /**
   * Standard errors that stay right if effects of a cluster depend on each other otherwise than the
   * model has it; empty without a fit.
   *
   * @param clusters as for the fit
   */
  public Optional<RobustVariance> robust(
      List<String> clusters, RobustVariance.Correction correction, double level) {
    return fit.map(
        found -> {
          List<List<Double>> covariance = new ArrayList<>();
          for (int i = 0; i < found.parameters(); i++) {
            int row = i;
            covariance.add(
                IntStream.range(0, found.parameters())
                    .mapToObj(j -> found.covariance(row, j))
                    .toList());
          }
          return RobustVariance.of(
              new ClusteredFit(
                  design,
                  coefficients.stream().map(one -> one.value().estimate()).toList(),
                  found.residuals(),
                  covariance,
                  clusters,
                  new ClusterCovariance(found)),
              correction,
              level);
        });
  }
}
