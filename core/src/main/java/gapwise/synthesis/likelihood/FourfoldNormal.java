package gapwise.synthesis.likelihood;

import gapwise.effect.TwoByTwo;
import java.util.List;

/**
 * Odds ratios that differ between studies by a normal distribution of their logs, by maximum
 * likelihood. Tables whose margins leave them no choice say nothing and are passed over.
 */
public final class FourfoldNormal {
  private FourfoldNormal() {}

  /**
   * Given all margins of each table: the non-central hypergeometric distribution (van Houwelingen,
   * Zwinderman and Stijnen, Stat Med 1993;12:2273; Stijnen, Hamza and Ozdemir, Stat Med
   * 2010;29:3046).
   *
   * @param events of the first group, each 0 to its total
   * @param totals of the first group
   * @param otherEvents of the second group
   * @param otherTotals of the second group
   * @param points of the adaptive quadrature, 1 (Laplace) to 200
   */
  public static LikelihoodFit conditional(
      double[] events, double[] totals, double[] otherEvents, double[] otherTotals, int points) {
    double[][] told = informative(events, totals, otherEvents, otherTotals);
    return LikelihoodSearch.fit(given(told), points);
  }

  /**
   * With an intercept a study: a logistic model with random treatment effect (Turner et al., Stat
   * Med 2000;19:3417). The two codings are two models: with 0 and 1 the spread between studies adds
   * to the first group alone, with halves it is shared out evenly.
   *
   * @param half whether groups are coded 1/2 and -1/2 instead of 1 and 0
   */
  public static LikelihoodFit unconditional(
      double[] events,
      double[] totals,
      double[] otherEvents,
      double[] otherTotals,
      boolean half,
      int points) {
    return LikelihoodSearch.fit(
        withIntercepts(informative(events, totals, otherEvents, otherTotals), half), points);
  }

  /** The informative ones of some tables, given all their margins. */
  static HypergeometricLikelihoods given(List<TwoByTwo> tables) {
    return given(informative(tables));
  }

  /** The informative ones of some tables, each with an intercept. */
  static StudyLikelihoods withIntercepts(List<TwoByTwo> tables, boolean half) {
    return withIntercepts(informative(tables), half);
  }

  private static StudyLikelihoods withIntercepts(double[][] told, boolean half) {
    double[] none = new double[told[0].length];
    return new TwoArmLikelihoods(
        new BinomialLikelihoods(told[0], told[1], none),
        new BinomialLikelihoods(told[2], told[3], none),
        given(told),
        half);
  }

  private static double[][] informative(List<TwoByTwo> tables) {
    return informative(
        tables.stream().mapToDouble(t -> t.intervention().events()).toArray(),
        tables.stream().mapToDouble(t -> t.intervention().total()).toArray(),
        tables.stream().mapToDouble(t -> t.comparator().events()).toArray(),
        tables.stream().mapToDouble(t -> t.comparator().total()).toArray());
  }

  private static HypergeometricLikelihoods given(double[][] told) {
    double[] all = new double[told[0].length];
    for (int i = 0; i < all.length; i++) {
      all[i] = told[0][i] + told[2][i];
    }
    return new HypergeometricLikelihoods(told[0], told[1], told[3], all);
  }

  /** The tables with both an event and a patient without. */
  private static double[][] informative(double[]... columns) {
    int k = columns[0].length;
    double[][] kept = new double[columns.length][k];
    int count = 0;
    for (int i = 0; i < k; i++) {
      double events = columns[0][i] + columns[2][i];
      if (events > 0 && events < columns[1][i] + columns[3][i]) {
        for (int c = 0; c < columns.length; c++) {
          kept[c][count] = columns[c][i];
        }
        count++;
      }
    }
    for (int c = 0; c < columns.length; c++) {
      kept[c] = java.util.Arrays.copyOf(kept[c], count);
    }
    return kept;
  }
}
