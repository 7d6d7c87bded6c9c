package gapwise.synthesis.regression;

import static gapwise.sentence.Sentences.say;

import gapwise.budget.Work;
import gapwise.numeric.ReferenceDistribution;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.GroupMeans;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.ResidualVariance;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * A regression of effects on the terms of a design, with weights 1/(v + tau squared) (Berkey et
 * al., Stat Med 1995;14:395; van Houwelingen et al., Stat Med 2002;21:589).
 *
 * @param fit coefficients, and what follows from them; empty if they cannot be estimated
 * @param heterogeneity what is left of it
 * @param likelihood of the variance between studies, for the likelihood estimators
 * @param warnings what a reader must know, and why something is missing
 */
public record Regression(
    Optional<Fit> fit,
    Heterogeneity heterogeneity,
    Optional<Pooled.Likelihood> likelihood,
    List<Problem> warnings) {

  /**
   * Estimated coefficients.
   *
   * @param design the terms
   * @param coefficients one for each
   * @param covariance of the coefficients, as the test has it
   * @param modelCovariance (X'WX)^-1
   * @param tauSquared residual, 0 for a common effect
   * @param scale weighted mean square of the residuals
   * @param residuals effect less fitted mean
   * @param weights 1/(v + tau squared)
   * @param moderatorTest of all terms but the intercept; empty if there are none
   * @param rSquared share of the variance between studies explained, 0 to 1; empty for a common
   *     effect or where there is nothing to explain
   */
  public record Fit(
      DesignMatrix design,
      List<Coefficient> coefficients,
      List<List<Double>> covariance,
      List<List<Double>> modelCovariance,
      double tauSquared,
      double scale,
      List<Double> residuals,
      List<Double> weights,
      Optional<WaldTest> moderatorTest,
      OptionalDouble rSquared) {
    public Fit {
      coefficients = List.copyOf(coefficients);
      covariance = covariance.stream().map(List::copyOf).toList();
      modelCovariance = modelCovariance.stream().map(List::copyOf).toList();
      residuals = List.copyOf(residuals);
      weights = List.copyOf(weights);
    }

    /** Whether the limits of a coefficient come to one value: nothing is left about the line. */
    public boolean isWithoutWidth() {
      return coefficients.stream()
          .map(one -> one.value().interval())
          .anyMatch(limits -> !(limits.lower() < limits.upper()));
    }

    /** k - p. */
    public int residualDegreesOfFreedom() {
      return design.rows() - design.columns();
    }
  }

  public Regression {
    warnings = List.copyOf(warnings);
  }

  /** Fits; never throws for a sample and a design of as many rows. */
  public static Regression of(
      EffectSample sample, DesignMatrix design, RegressionSettings settings) {
    if (design.rows() != sample.size()) {
      throw new IllegalArgumentException(
          sample.size() + " effects with a design of " + design.rows() + " rows");
    }
    Optional<Problem> not = Obstacles.of(sample, design);
    if (not.isPresent()) {
      return new Regression(
          Optional.empty(), Heterogeneity.UNKNOWN, Optional.empty(), List.of(not.get()));
    }
    LinearModel model = LinearModel.of(design);
    ResidualVariance variance = ResidualVariance.of(sample, model, settings.pooling());
    List<Problem> warnings = new ArrayList<>(variance.warnings());
    Optional<Fit> fit =
        variance
            .estimate()
            .map(
                found ->
                    fit(
                        sample,
                        model,
                        settings,
                        found.value(),
                        variance.scale(),
                        rSquared(sample, settings, found.value())));
    if (fit.isPresent()
        && settings.test() == RegressionTest.HARTUNG_KNAPP
        && variance.scale() == 0) {
      warnings.add(new Problem("", "zero-width-interval", say("analysis.moderators-fit-exactly")));
    }
    return new Regression(fit, variance.heterogeneity(), variance.likelihood(), warnings);
  }

  /**
   * The coefficients alone, without what is told of the differences between studies: for the many
   * fits of a permutation test and of leaving studies out. R squared is left out.
   *
   * @return empty if they cannot be estimated
   */
  static Optional<Fit> estimate(
      EffectSample sample, DesignMatrix design, RegressionSettings settings) {
    LinearModel model = LinearModel.of(design);
    TauSquared found = new TauSquared.Estimate(0, true);
    if (settings.pooling().estimator().isPresent()) {
      found = settings.pooling().estimator().get().estimate(sample, model);
    }
    if (found instanceof TauSquared.Estimate estimate) {
      double scale = ResidualVariance.scale(sample, model, estimate.value());
      return Optional.of(
          fit(sample, model, settings, estimate.value(), scale, OptionalDouble.empty()));
    }
    return Optional.empty();
  }

  private static Fit fit(
      EffectSample sample,
      LinearModel model,
      RegressionSettings settings,
      double tauSquared,
      double scale,
      OptionalDouble rSquared) {
    DesignMatrix design = model.design();
    double[] weights = sample.weights(tauSquared);
    LinearModel.LinearFit fit = model.told(sample, weights);
    double[][] modelCovariance = fit.covariance();
    int residual = design.rows() - design.columns();
    boolean scaled = settings.test() == RegressionTest.HARTUNG_KNAPP;
    double[][] covariance = scaled ? times(modelCovariance, scale) : modelCovariance;
    ReferenceDistribution reference =
        scaled ? ReferenceDistribution.studentT(residual) : ReferenceDistribution.normal();
    List<Coefficient> coefficients = new ArrayList<>();
    for (int j = 0; j < design.columns(); j++) {
      coefficients.add(
          Coefficient.of(
              design.terms().get(j),
              fit.coefficient(j),
              Math.sqrt(covariance[j][j]),
              reference,
              settings.pooling().level()));
    }
    List<String> moderators =
        design.terms().stream().filter(term -> !term.equals(DesignMatrix.INTERCEPT)).toList();
    return new Fit(
        design,
        coefficients,
        boxed(covariance),
        boxed(modelCovariance),
        tauSquared,
        scale,
        IntStream.range(0, sample.size()).mapToObj(fit::residual).toList(),
        IntStream.range(0, sample.size()).mapToObj(i -> weights[i]).toList(),
        WaldTest.of(
            sample,
            model,
            fit,
            weights,
            scaled ? Optional.of(scale) : Optional.empty(),
            moderators),
        rSquared);
  }

  private static OptionalDouble rSquared(
      EffectSample sample, RegressionSettings settings, double tauSquared) {
    if (settings.pooling().estimator().isPresent()
        && settings.pooling().estimator().get().estimate(sample, GroupMeans.one(sample))
            instanceof TauSquared.Estimate without
        && without.value() > 0) {
      return OptionalDouble.of(Math.max(0, (without.value() - tauSquared) / without.value()));
    }
    return OptionalDouble.empty();
  }

  /**
   * Whether some terms are all 0 together, by the regression's own test.
   *
   * @param fit of the sample
   */
  public static Optional<WaldTest> test(
      Fit fit, EffectSample sample, RegressionSettings settings, List<String> terms) {
    LinearModel model = LinearModel.of(fit.design());
    double[] weights = sample.weights(fit.tauSquared());
    boolean scaled = settings.test() == RegressionTest.HARTUNG_KNAPP;
    return WaldTest.of(
        sample,
        model,
        model.told(sample, weights),
        weights,
        scaled ? Optional.of(fit.scale()) : Optional.empty(),
        terms);
  }

  /**
   * The regression without each study in turn, tau squared estimated anew.
   *
   * @return one for each study; empty where the others do not tell the coefficients apart
   */
  public static List<Optional<Fit>> withoutEach(
      EffectSample sample, DesignMatrix design, RegressionSettings settings) {
    List<Optional<Fit>> fits = new ArrayList<>();
    for (int i = 0; i < sample.size(); i++) {
      Work.check();
      int omitted = i;
      List<Integer> rest =
          IntStream.range(0, sample.size()).filter(j -> j != omitted).boxed().toList();
      EffectSample others = sample.at(rest);
      DesignMatrix left = design.at(rest);
      fits.add(
          Obstacles.of(others, left).isPresent()
              ? Optional.empty()
              : estimate(others, left, settings));
    }
    return fits;
  }

  static double[][] times(double[][] matrix, double factor) {
    double[][] product = new double[matrix.length][matrix.length];
    for (int a = 0; a < matrix.length; a++) {
      for (int b = 0; b < matrix.length; b++) {
        product[a][b] = factor * matrix[a][b];
      }
    }
    return product;
  }

  static List<List<Double>> boxed(double[][] matrix) {
    List<List<Double>> rows = new ArrayList<>();
    for (double[] row : matrix) {
      List<Double> boxed = new ArrayList<>();
      for (double value : row) {
        boxed.add(value);
      }
      rows.add(boxed);
    }
    return rows;
  }
}
