package gapwise.synthesis.regression;

import static gapwise.sentence.Sentences.say;

import gapwise.numeric.ReferenceDistribution;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Standard errors that stay right when effects within a cluster depend on each other in a way the
 * weights do not know: A (sum X'W e e'W X) A over clusters, A = (X'WX)^-1, e the residuals (Hedges,
 * Tipton and Johnson, Res Synth Methods 2010;1:39). Intervals and tests by t on clusters less
 * coefficients.
 *
 * @param clusters how many, m
 * @param coefficients with robust standard errors; empty without degrees of freedom
 * @param warnings what a reader must know
 */
public record RobustVariance(int clusters, List<Coefficient> coefficients, List<Problem> warnings) {

  /** What the sandwich is multiplied by. */
  public enum Correction {
    /** m/(m - p), against the narrowness of few clusters. */
    CR1,
    /** 1. */
    CR0;
  }

  /** The weights of a cluster, known by what they make of its rows of the design. */
  public interface BlockWeights {
    /**
     * W X for the rows of one cluster.
     *
     * @param places of the rows, in their order
     * @return as many rows, each with a number for each term
     */
    double[][] timesDesign(List<Integer> places);

    /** Weights of rows that are thought independent. */
    static BlockWeights diagonal(DesignMatrix design, List<Double> weights) {
      return places -> {
        double[][] product = new double[places.size()][];
        for (int i = 0; i < product.length; i++) {
          product[i] = design.row(places.get(i));
          for (int j = 0; j < product[i].length; j++) {
            product[i][j] *= weights.get(places.get(i));
          }
        }
        return product;
      };
    }
  }

  public RobustVariance {
    coefficients = List.copyOf(coefficients);
    warnings = List.copyOf(warnings);
  }

  /** Of a regression with independent weights. */
  public static RobustVariance of(
      Regression.Fit fit, List<String> clusters, Correction correction, double level) {
    return of(
        fit.design().terms(),
        fit.coefficients().stream().map(one -> one.value().estimate()).toList(),
        fit.residuals(),
        fit.modelCovariance(),
        clusters,
        BlockWeights.diagonal(fit.design(), fit.weights()),
        correction,
        level);
  }

  /**
   * Of any weighted least-squares fit whose weights are 0 between clusters.
   *
   * @param terms names of the coefficients
   * @param estimates the coefficients
   * @param residuals effect less fitted mean, one a row
   * @param modelCovariance (X'WX)^-1
   * @param clusters the cluster of each row
   * @param weights of the rows of a cluster
   * @param level above 0 and below 1
   */
  public static RobustVariance of(
      List<String> terms,
      List<Double> estimates,
      List<Double> residuals,
      List<List<Double>> modelCovariance,
      List<String> clusters,
      BlockWeights weights,
      Correction correction,
      double level) {
    Map<String, List<Integer>> places = new LinkedHashMap<>();
    for (int i = 0; i < clusters.size(); i++) {
      places.computeIfAbsent(clusters.get(i), cluster -> new ArrayList<>()).add(i);
    }
    int p = terms.size();
    int degrees = places.size() - p;
    if (degrees < 1) {
      return new RobustVariance(places.size(), List.of(), List.of(tooFew(places.size(), p)));
    }
    double[] variances = new double[p];
    for (List<Integer> cluster : places.values()) {
      double[] score = score(weights.timesDesign(cluster), cluster, residuals, p);
      for (int a = 0; a < p; a++) {
        double influence = 0;
        for (int b = 0; b < p; b++) {
          influence += modelCovariance.get(a).get(b) * score[b];
        }
        variances[a] += influence * influence;
      }
    }
    double factor = correction == Correction.CR1 ? (double) places.size() / degrees : 1;
    ReferenceDistribution reference = ReferenceDistribution.studentT(degrees);
    List<Coefficient> coefficients = new ArrayList<>();
    for (int a = 0; a < p; a++) {
      double error = Math.sqrt(factor * variances[a]);
      coefficients.add(Coefficient.of(terms.get(a), estimates.get(a), error, reference, level));
    }
    return new RobustVariance(places.size(), coefficients, warnings(coefficients, degrees));
  }

  /** X'W e of a cluster. */
  private static double[] score(
      double[][] weighted, List<Integer> cluster, List<Double> residuals, int p) {
    double[] score = new double[p];
    for (int i = 0; i < weighted.length; i++) {
      for (int j = 0; j < p; j++) {
        score[j] += weighted[i][j] * residuals.get(cluster.get(i));
      }
    }
    return score;
  }

  private static Problem tooFew(int clusters, int coefficients) {
    return new Problem(
        "",
        "too-few-studies",
        say(
            "analysis.robust-left-out",
            Map.of("coefficients", coefficients, "clusters", clusters)));
  }

  private static List<Problem> warnings(List<Coefficient> coefficients, int degrees) {
    List<Problem> warnings = new ArrayList<>();
    // Below four degrees of freedom such tests are not to be trusted: Tipton, Psychol Methods
    // 2015;20:375 (said there of Satterthwaite's degrees, which are never more than these).
    if (degrees < 4) {
      warnings.add(
          new Problem(
              "", "few-clusters", say("analysis.few-clusters", Map.of("degrees", degrees))));
    }
    if (coefficients.stream().anyMatch(one -> one.value().standardError() == 0)) {
      warnings.add(new Problem("", "zero-width-interval", say("analysis.robust-variance-zero")));
    }
    return warnings;
  }
}
