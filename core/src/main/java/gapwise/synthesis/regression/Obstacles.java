package gapwise.synthesis.regression;

import gapwise.numeric.LeastSquares;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;
import java.util.List;
import java.util.Optional;

/** Why the coefficients of a design cannot be estimated from a sample. */
public final class Obstacles {
  private Obstacles() {}

  /** The first reason; empty if there is none. */
  public static Optional<Problem> of(EffectSample sample, DesignMatrix design) {
    Optional<Problem> few = tooFew(design);
    if (few.isPresent()) {
      return few;
    }
    if (sample.hasZeroVariance()) {
      return because(
          "zero-variance",
          "a study's estimated variance is 0, so it would take all the weight and nothing is fitted");
    }
    Optional<Problem> alike = collinear(design);
    if (alike.isPresent()) {
      return alike;
    }
    if (!sample.isWithinArithmetic() || !solvable(sample, design)) {
      return because(
          "number-out-of-range",
          "effects, variances and moderators differ by more powers of ten than can be reckoned"
              + " with, so nothing is fitted; check the units of the data");
    }
    return Optional.empty();
  }

  /** The first reason that lies in the design alone, whatever the studies found. */
  public static Optional<Problem> of(DesignMatrix design) {
    return tooFew(design).or(() -> collinear(design));
  }

  private static Optional<Problem> tooFew(DesignMatrix design) {
    int k = design.rows();
    int p = design.columns();
    if (k <= p) {
      return because(
          "too-few-studies",
          "a regression with "
              + p
              + " coefficients needs more than "
              + p
              + " studies and has "
              + k
              + "; it is left out");
    }
    return Optional.empty();
  }

  private static Optional<Problem> collinear(DesignMatrix design) {
    List<String> dependent = design.dependentTerms();
    if (!dependent.isEmpty()) {
      return because(
          "collinear-moderators",
          "no data can tell the coefficients apart: over the studies that enter, "
              + named(dependent)
              + " follow"
              + (dependent.size() == 1 ? "s" : "")
              + " from the terms before (a constant column, a level or a combination that no study"
              + " has, or columns that say the same); the regression is left out, remove what is"
              + " too much");
    }
    return Optional.empty();
  }

  /** Extreme weights can hide all but a few studies, whose rows alone are then collinear. */
  private static boolean solvable(EffectSample sample, DesignMatrix design) {
    LeastSquares squares = LeastSquares.of(design.values(), design.columns(), sample.weights(0));
    if (!squares.isFullRank() || !Double.isFinite(squares.logDeterminant())) {
      return false;
    }
    double[][] inverse = squares.inverse();
    double[] effects = new double[sample.size()];
    for (int i = 0; i < effects.length; i++) {
      effects[i] = sample.effect(i);
    }
    LeastSquares.Solution solution = squares.solve(effects);
    for (int j = 0; j < inverse.length; j++) {
      if (!(inverse[j][j] > 0 && inverse[j][j] < 1e300)
          || !Double.isFinite(solution.coefficient(j))) {
        return false;
      }
    }
    return true;
  }

  private static String named(List<String> terms) {
    return "'" + String.join("', '", terms) + "'";
  }

  private static Optional<Problem> because(String code, String message) {
    return Optional.of(new Problem("", code, message));
  }
}
