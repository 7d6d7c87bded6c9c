package gapwise.synthesis.agreement;

import gapwise.budget.Work;
import gapwise.effect.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * Intraclass correlations of n subjects each rated by the same k raters: Shrout and Fleiss, Psychol
 * Bull 1979;86:420. Limits of the one-way and fixed forms by exact F, of the random form by
 * Satterthwaite's degrees of freedom; those of means of raters from those of single raters by the
 * Spearman-Brown formula.
 *
 * @param betweenSubjects mean square
 * @param withinSubjects mean square
 * @param betweenRaters mean square
 * @param residual mean square of the two-way table
 * @param forms one-way, two-way random and two-way fixed, each single and mean; without those that
 *     are 0/0
 */
public record IntraclassCorrelation(
    double betweenSubjects,
    double withinSubjects,
    double betweenRaters,
    double residual,
    List<Form> forms) {

  /**
   * One form.
   *
   * @param name such as {@code two-way-random-single}
   * @param limits empty if raters leave no residual spread
   */
  public record Form(String name, double estimate, Optional<Interval> limits) {}

  public IntraclassCorrelation {
    forms = List.copyOf(forms);
  }

  /**
   * From ratings.
   *
   * @param ratings at least two subjects, each with one value of each of at least two raters
   * @param level of the limits, above 0 and below 1
   */
  public static IntraclassCorrelation of(List<List<Double>> ratings, double level) {
    int n = ratings.size();
    int k = ratings.get(0).size();
    // Taken from the first rating, ratings that are all alike leave no rounding behind.
    double first = ratings.get(0).get(0);
    double[] subjects = new double[n];
    double[] raters = new double[k];
    double grand = 0;
    for (int i = 0; i < n; i++) {
      Work.check();
      for (int j = 0; j < k; j++) {
        double x = ratings.get(i).get(j) - first;
        subjects[i] += x / k;
        raters[j] += x / n;
        grand += x / n / k;
      }
    }
    double between = 0;
    double within = 0;
    double residual = 0;
    double rater = 0;
    for (int j = 0; j < k; j++) {
      rater += n * square(raters[j] - grand);
    }
    for (int i = 0; i < n; i++) {
      Work.check();
      between += k * square(subjects[i] - grand);
      for (int j = 0; j < k; j++) {
        double x = ratings.get(i).get(j) - first;
        within += square(x - subjects[i]);
        residual += square(x - subjects[i] - raters[j] + grand);
      }
    }
    Squares s =
        new Squares(
            n,
            k,
            between / (n - 1),
            within / n / (k - 1),
            rater / (k - 1),
            residual / (n - 1) / (k - 1),
            (1 - level) / 2);
    return new IntraclassCorrelation(s.between, s.within, s.rater, s.residual, s.forms());
  }

  private static double square(double x) {
    return x * x;
  }

  private record Squares(
      int n, int k, double between, double within, double rater, double residual, double tail) {

    List<Form> forms() {
      List<Form> forms = new ArrayList<>();
      add(
          forms,
          "one-way-",
          (between - within) / (between + (k - 1) * within),
          exact(within, n * (k - 1.0)));
      double random =
          (between - residual) / (between + (k - 1) * residual + k * (rater - residual) / n);
      add(forms, "two-way-random-", random, satterthwaite(random));
      add(
          forms,
          "two-way-fixed-",
          (between - residual) / (between + (k - 1) * residual),
          exact(residual, (n - 1.0) * (k - 1)));
      return forms;
    }

    private void add(List<Form> forms, String name, double single, Optional<Interval> limits) {
      double mean = ofMean(single);
      if (Double.isFinite(single) && Double.isFinite(mean)) {
        forms.add(new Form(name + "single", single, limits));
        forms.add(
            new Form(
                name + "mean",
                mean,
                limits.flatMap(l -> limits(ofMean(l.lower()), ofMean(l.upper())))));
      }
    }

    private double ofMean(double single) {
      return k * single / (1 + (k - 1) * single);
    }

    private Optional<Interval> exact(double error, double degrees) {
      double f = between / error;
      double low = f / upperPoint(n - 1, degrees);
      double high = f * upperPoint(degrees, n - 1);
      return limits((low - 1) / (low + k - 1), (high - 1) / (high + k - 1));
    }

    private Optional<Interval> satterthwaite(double rho) {
      double f = rater / residual;
      double rest = n * (1 + (k - 1) * rho) - k * rho;
      double degrees =
          (k - 1.0)
              * (n - 1)
              * square(k * rho * f + rest)
              / ((n - 1) * square(k * rho * f) + square(rest));
      if (!(degrees > 0 && Double.isFinite(degrees))) {
        return Optional.empty();
      }
      double first = upperPoint(n - 1, degrees);
      double second = upperPoint(degrees, n - 1);
      double others = k * rater + (k * (double) n - k - n) * residual;
      return limits(
          n * (between - first * residual) / (first * others + n * between),
          n * (second * between - residual) / (others + n * second * between));
    }

    private double upperPoint(double numerator, double denominator) {
      return FDistribution.of(numerator, denominator).inverseSurvivalProbability(tail);
    }

    private static Optional<Interval> limits(double lower, double upper) {
      return lower <= upper && Double.isFinite(lower) && Double.isFinite(upper)
          ? Optional.of(new Interval(lower, upper))
          : Optional.empty();
    }
  }
}
