package gapwise.synthesis.multilevel;

import gapwise.synthesis.heterogeneity.Heterogeneity;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A fitted {@link ThreeLevelModel}. Immutable. */
public final class ThreeLevelFit {
  /** Which variances the data can tell. */
  public enum Told {
    /** Both. */
    APART,
    /** No cluster has two rows: only between and within together. */
    ONLY_SUM,
    /** One cluster, or a design that takes up every cluster's mean: only within. */
    ONLY_WITHIN
  }

  private final ClusteredRows rows;
  private final VarianceSearch.Top top;
  private final Told told;
  private final boolean restricted;
  private final CovarianceFit common;
  private final CovarianceFit fit;

  ThreeLevelFit(
      ClusteredRows rows,
      VarianceSearch.Top top,
      Told told,
      boolean restricted,
      CovarianceFit common) {
    this.rows = rows;
    this.top = top;
    this.told = told;
    this.restricted = restricted;
    this.common = common;
    this.fit = new CovarianceFit(rows, top.between(), top.within());
  }

  /** Which variances the data can tell. */
  public Told told() {
    return told;
  }

  /** Variance between clusters, at least 0; empty if it cannot be told from that within. */
  public OptionalDouble betweenVariance() {
    return told == Told.APART ? OptionalDouble.of(top.between()) : OptionalDouble.empty();
  }

  /** Variance between rows of a cluster, at least 0; empty if only the sum can be told. */
  public OptionalDouble withinVariance() {
    return told == Told.ONLY_SUM ? OptionalDouble.empty() : OptionalDouble.of(top.within());
  }

  /** Variance of the true values of single rows, between and within together. */
  public OptionalDouble totalVariance() {
    return told == Told.ONLY_WITHIN
        ? OptionalDouble.empty()
        : OptionalDouble.of(top.between() + top.within());
  }

  /** Number of columns of the design, p. */
  public int parameters() {
    return rows.parameters();
  }

  /** Number of rows, k. */
  public int size() {
    return rows.size();
  }

  /** Number of clusters, m. */
  public int clusters() {
    return rows.clusters();
  }

  /** Coefficient of a column of the design. */
  public double coefficient(int term) {
    return fit.factor().coefficient(term);
  }

  /** Covariance of two coefficients, the inverse of X'V^-1X. */
  public double covariance(int one, int other) {
    return fit.factor().covariance(one, other);
  }

  /** The log likelihood at its top, with all constants but log det(X'X)/2. */
  public double logLikelihood() {
    return fit.logLikelihood(restricted);
  }

  /** Whether the likelihood is the restricted one. */
  public boolean restricted() {
    return restricted;
  }

  /** Whether no allowed direction leads up from the top. */
  public boolean converged() {
    return top.converged();
  }

  /** Q by weights 1/v, and what the variances together are beside that within studies. */
  public Heterogeneity heterogeneity() {
    Heterogeneity fromQ =
        Heterogeneity.fromQ(common.residualSquares(), rows.size() - rows.parameters());
    double typical = typicalVariance();
    return totalVariance().isPresent() && typical > 0 && Double.isFinite(typical)
        ? fromQ.with(totalVariance().getAsDouble(), typical, Optional.empty())
        : fromQ;
  }

  /** What the variances within studies are like, by weights 1/v: Higgins and Thompson 2002. */
  private double typicalVariance() {
    return (rows.size() - rows.parameters()) / common.traces(true)[0];
  }

  /**
   * Share of a row's variance that lies between clusters, 0 to 1: between/(between + within +
   * typical v) (Cheung, Psychol Methods 2014;19:211, equation 17).
   */
  public OptionalDouble iSquaredBetween() {
    return share(top.between());
  }

  /** Share that lies within clusters, between their rows: the same equation with within above. */
  public OptionalDouble iSquaredWithin() {
    return share(top.within());
  }

  /**
   * Limits of the variances and their shares; empty with more than {@link VarianceLimits#MOST_ROWS}
   * rows, or where only the sum of the variances can be told.
   *
   * @param level above 0 and below 1
   */
  public Optional<VarianceLimits> limits(double level) {
    return told == Told.ONLY_SUM || rows.size() > VarianceLimits.MOST_ROWS
        ? Optional.empty()
        : Optional.of(
            VarianceLimits.of(
                rows, this, typicalVariance(), ThreeLevelModel.range(rows, restricted), level));
  }

  private OptionalDouble share(double variance) {
    double all = top.between() + top.within() + typicalVariance();
    return told == Told.APART && all > 0 && Double.isFinite(all)
        ? OptionalDouble.of(variance / all)
        : OptionalDouble.empty();
  }

  /**
   * Share of each row in a mean with these variances, in the sample's order; the first column of
   * the design must be ones.
   */
  public List<Double> shares() {
    double[] weighted = fit.weightedDesign()[0];
    double sum = 0;
    for (double weight : weighted) {
      sum += weight;
    }
    List<Double> shares = new ArrayList<>(Collections.nCopies(weighted.length, 0.0));
    for (int i = 0; i < weighted.length; i++) {
      shares.set(rows.placeInSample(i), weighted[i] / sum);
    }
    return shares;
  }

  /** Effect less fitted mean of each row, in the sample's order. */
  List<Double> residuals() {
    List<Double> residuals = new ArrayList<>(Collections.nCopies(rows.size(), 0.0));
    for (int i = 0; i < rows.size(); i++) {
      double fitted = 0;
      for (int j = 0; j < rows.parameters(); j++) {
        fitted += coefficient(j) * rows.column(j)[i];
      }
      residuals.set(rows.placeInSample(i), rows.column(rows.parameters())[i] - fitted);
    }
    return residuals;
  }

  /** The variance of a row of the sample, or its covariance with another of its cluster. */
  double rowCovariance(int placeInSample, boolean withItself) {
    return top.between() + (withItself ? top.within() + rows.varianceInSample(placeInSample) : 0);
  }

  /** Rows of the inverse covariance times the design, in the sample's order. */
  double[][] weightedDesign() {
    double[][] columns = fit.weightedDesign();
    double[][] weighted = new double[rows.size()][columns.length];
    for (int i = 0; i < rows.size(); i++) {
      for (int j = 0; j < columns.length; j++) {
        weighted[rows.placeInSample(i)][j] = columns[j][i];
      }
    }
    return weighted;
  }
}
