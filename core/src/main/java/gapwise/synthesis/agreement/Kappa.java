package gapwise.synthesis.agreement;

import java.util.List;
import java.util.Optional;

/**
 * Agreement of two raters beyond chance, with weights for how far apart they are: Cohen, Educ
 * Psychol Meas 1960;20:37 and Psychol Bull 1968;70:213; standard errors of Fleiss, Cohen and
 * Everitt, Psychol Bull 1969;72:323, equations 9 and 13.
 *
 * @param estimate at most 1
 * @param standardError for intervals, large sample
 * @param standardErrorUnderZero for a test of no agreement beyond chance
 */
public record Kappa(double estimate, double standardError, double standardErrorUnderZero) {

  /**
   * Kappa of a table.
   *
   * @param counts of each pair of categories, rater 1 in rows; square
   * @param weights of agreement for each pair, 1 on the diagonal
   * @return empty if chance alone gives full agreement, as when both use one category only
   */
  public static Optional<Kappa> of(List<List<Double>> counts, List<List<Double>> weights) {
    int c = counts.size();
    double total = 0;
    double[] rows = new double[c];
    double[] columns = new double[c];
    for (int i = 0; i < c; i++) {
      for (int j = 0; j < c; j++) {
        rows[i] += counts.get(i).get(j);
        columns[j] += counts.get(i).get(j);
        total += counts.get(i).get(j);
      }
    }
    if (!(total > 0)) {
      return Optional.empty();
    }
    double observed = 0;
    double expected = 0;
    double[] rowMeans = new double[c];
    double[] columnMeans = new double[c];
    for (int i = 0; i < c; i++) {
      for (int j = 0; j < c; j++) {
        double w = weights.get(i).get(j);
        observed += w * counts.get(i).get(j) / total;
        expected += w * (rows[i] / total) * (columns[j] / total);
        rowMeans[i] += w * columns[j] / total;
        columnMeans[j] += w * rows[i] / total;
      }
    }
    if (expected >= 1) {
      return Optional.empty();
    }
    double spread = 0;
    double spreadUnderZero = 0;
    for (int i = 0; i < c; i++) {
      for (int j = 0; j < c; j++) {
        double w = weights.get(i).get(j);
        double means = rowMeans[i] + columnMeans[j];
        double away = w * (1 - expected) - means * (1 - observed);
        spread += counts.get(i).get(j) / total * away * away;
        spreadUnderZero += rows[i] / total * (columns[j] / total) * (w - means) * (w - means);
      }
    }
    double centre = observed * expected - 2 * expected + observed;
    double beyond = 1 - expected;
    return Optional.of(
        new Kappa(
            (observed - expected) / beyond,
            Math.sqrt(Math.max(0, spread - centre * centre) / total) / (beyond * beyond),
            Math.sqrt(Math.max(0, spreadUnderZero - expected * expected) / total) / beyond));
  }
}
