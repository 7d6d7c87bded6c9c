package gapwise.synthesis.multilevel;

import gapwise.synthesis.multilevel.ThreeLevelFit.Told;

/**
 * Effects y = X b + u + e + sampling error, with u of variance "between" shared by the rows of a
 * cluster, e of variance "within" for each row alone, and known sampling variances v:
 * Konstantopoulos, Res Synth Methods 2011;2:61. The variances have the highest full or restricted
 * likelihood (Patterson and Thompson, Biometrika 1971;58:545), neither below 0.
 */
public final class ThreeLevelModel {
  /** A trace this much below its full size is 0 but for rounding. */
  private static final double NOTHING_LEFT = 1e-9;

  private ThreeLevelModel() {}

  /**
   * Fits.
   *
   * @param rows with more rows than columns of the design, variances above 0, effects and variances
   *     within arithmetic
   * @param restricted whether the likelihood is the restricted one
   * @throws IllegalArgumentException if no degrees of freedom are left or the columns of the design
   *     are linearly dependent
   */
  public static ThreeLevelFit fit(ClusteredRows rows, boolean restricted) {
    if (rows.size() <= rows.parameters()) {
      throw new IllegalArgumentException(
          rows.size() + " rows leave no degrees of freedom for " + rows.parameters() + " terms");
    }
    CovarianceFit common = new CovarianceFit(rows, 0, 0);
    double range = range(rows, restricted);
    VarianceSearch.Top nothing =
        new VarianceSearch.Top(0, 0, common.logLikelihood(restricted), true);
    Told told = told(rows, Math.max(range, largestVariance(rows)));
    if (!(range > 0)) {
      return new ThreeLevelFit(rows, nothing, told, restricted, common);
    }
    VarianceSearch search = new VarianceSearch(rows, restricted, range);
    VarianceSearch.Top top = told == Told.APART ? search.highest() : search.withinOnly();
    return new ThreeLevelFit(rows, top, told, restricted, common);
  }

  /**
   * Fits with no variance within clusters beyond v: rows of one cluster share its deviation and
   * nothing else. Otherwise as {@link #fit}.
   */
  public static ThreeLevelFit fitShared(ClusteredRows rows, boolean restricted) {
    if (rows.size() <= rows.parameters()) {
      throw new IllegalArgumentException(
          rows.size() + " rows leave no degrees of freedom for " + rows.parameters() + " terms");
    }
    CovarianceFit common = new CovarianceFit(rows, 0, 0);
    double range = range(rows, restricted);
    VarianceSearch.Top top =
        range > 0 && !clustersInDesign(rows, range)
            ? new VarianceSearch(rows, restricted, range).betweenOnly()
            : new VarianceSearch.Top(0, 0, common.logLikelihood(restricted), true);
    return new ThreeLevelFit(rows, top, Told.APART, restricted, common);
  }

  /** What rows, clusters and design leave to be told of the two variances. */
  private static Told told(ClusteredRows rows, double scale) {
    if (rows.eachAlone()) {
      return Told.ONLY_SUM;
    }
    return clustersInDesign(rows, scale) ? Told.ONLY_WITHIN : Told.APART;
  }

  /** Whether the design takes up the mean of every cluster. */
  private static boolean clustersInDesign(ClusteredRows rows, double scale) {
    CovarianceFit even = new CovarianceFit(rows, 0, scale);
    return even.traces(true)[1] <= NOTHING_LEFT * even.traces(false)[1];
  }

  /**
   * A variance above which the likelihood of a single variance falls for good: with D the squared
   * residuals without weights and n the terms of the likelihood, n t^2 = D (t + largest v).
   */
  static double range(ClusteredRows rows, boolean restricted) {
    double[][] columns = new double[rows.parameters() + 1][];
    for (int j = 0; j < columns.length; j++) {
      columns[j] = rows.column(j).clone();
    }
    double squares = new TriangularFactor(columns).residualSquares();
    double size = 0;
    for (double effect : rows.column(rows.parameters())) {
      size = Math.max(size, Math.abs(effect));
    }
    double rounding = Math.ulp(size) * Math.ulp(size) * rows.size();
    if (squares <= rounding) {
      return 0;
    }
    double half = squares / (2 * (rows.size() - (restricted ? rows.parameters() : 0)));
    return 1.001 * (half + Math.sqrt(half * half + 2 * half * largestVariance(rows)));
  }

  private static double largestVariance(ClusteredRows rows) {
    double largest = 0;
    for (int i = 0; i < rows.size(); i++) {
      largest = Math.max(largest, rows.variance(i));
    }
    return largest;
  }
}
