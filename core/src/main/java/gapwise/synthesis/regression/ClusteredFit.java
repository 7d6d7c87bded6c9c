package gapwise.synthesis.regression;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * A weighted least-squares fit whose weights are the inverse of a covariance that is 0 between
 * clusters. Immutable.
 *
 * @param design the terms
 * @param estimates one for each term
 * @param residuals effect less fitted mean, one a row
 * @param modelCovariance (X'WX)^-1
 * @param clusters the cluster of each row
 * @param covariance of the rows of a cluster, as the model has it
 */
public record ClusteredFit(
    DesignMatrix design,
    List<Double> estimates,
    List<Double> residuals,
    List<List<Double>> modelCovariance,
    List<String> clusters,
    WorkingCovariance covariance) {

  /** What the model takes for the covariance of rows of one cluster. */
  public interface WorkingCovariance {
    /** Of the rows at some places of one cluster, in their order. */
    RealMatrix of(List<Integer> places);

    /** Its inverse times the design of these rows: a row for each, a column for each term. */
    RealMatrix inverseTimesDesign(List<Integer> places);
  }

  /** Rows that are thought independent. */
  private record Independent(DesignMatrix design, List<Double> weights)
      implements WorkingCovariance {
    @Override
    public RealMatrix of(List<Integer> places) {
      RealMatrix variances = new Array2DRowRealMatrix(places.size(), places.size());
      for (int i = 0; i < places.size(); i++) {
        variances.setEntry(i, i, 1 / weights.get(places.get(i)));
      }
      return variances;
    }

    @Override
    public RealMatrix inverseTimesDesign(List<Integer> places) {
      RealMatrix product = new Array2DRowRealMatrix(places.size(), design.columns());
      for (int i = 0; i < places.size(); i++) {
        for (int j = 0; j < design.columns(); j++) {
          product.setEntry(i, j, weights.get(places.get(i)) * design.value(places.get(i), j));
        }
      }
      return product;
    }
  }

  public ClusteredFit {
    estimates = List.copyOf(estimates);
    residuals = List.copyOf(residuals);
    modelCovariance = modelCovariance.stream().map(List::copyOf).toList();
    clusters = List.copyOf(clusters);
  }

  /** Of a regression with independent weights. */
  public static ClusteredFit of(Regression.Fit fit, List<String> clusters) {
    return new ClusteredFit(
        fit.design(),
        fit.coefficients().stream().map(one -> one.value().estimate()).toList(),
        fit.residuals(),
        fit.modelCovariance(),
        clusters,
        new Independent(fit.design(), fit.weights()));
  }

  /** The places of the rows of each cluster, clusters in the order in which they first appear. */
  Map<String, List<Integer>> placesOfClusters() {
    Map<String, List<Integer>> places = new LinkedHashMap<>();
    for (int i = 0; i < clusters.size(); i++) {
      places.computeIfAbsent(clusters.get(i), cluster -> new ArrayList<>()).add(i);
    }
    return places;
  }

  /** Number of terms, p. */
  int terms() {
    return design.columns();
  }

  /** (X'WX)^-1. */
  RealMatrix inverseInformation() {
    RealMatrix matrix = new Array2DRowRealMatrix(terms(), terms());
    for (int a = 0; a < terms(); a++) {
      for (int b = 0; b < terms(); b++) {
        matrix.setEntry(a, b, modelCovariance.get(a).get(b));
      }
    }
    return matrix;
  }

  /** The design of some rows. */
  RealMatrix rows(List<Integer> places) {
    RealMatrix rows = new Array2DRowRealMatrix(places.size(), terms());
    for (int i = 0; i < places.size(); i++) {
      rows.setRow(i, design.row(places.get(i)));
    }
    return rows;
  }

  /** The residuals of some rows. */
  double[] residuals(List<Integer> places) {
    return places.stream().mapToDouble(residuals::get).toArray();
  }
}
