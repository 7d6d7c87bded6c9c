package gapwise.decision.certainty;

import gapwise.figure.value.Limits;
import java.util.List;

/**
 * How far what is known of a difference between two methods lowers and raises the certainty of it,
 * by its numbers alone.
 */
public final class ComparisonRules {
  private static final double FIFTH = 0.2;

  private ComparisonRules() {}

  /**
   * Levels for imprecision: the interval of the absolute difference against the least difference
   * that matters, of gain and of harm (Guyatt et al., J Clin Epidemiol 2011;64:1283; Zeng et al., J
   * Clin Epidemiol 2022;150:216); where it crosses neither but the effect is large, the number of
   * patients against the optimal information size.
   *
   * @param difference interval of the absolute difference
   * @param matters the least difference that matters, above 0, in the same unit
   * @param large whether the relative effect is large (over 30 % fewer)
   * @param patients of both groups
   * @param informationSize optimal information size of both groups
   */
  public static int imprecision(
      Limits difference, double matters, boolean large, long patients, long informationSize) {
    int crossed = crossed(difference, matters) + crossed(difference, -matters);
    if (crossed > 0 || !large || patients >= informationSize) {
      return crossed;
    }
    return patients * 2 < informationSize ? 2 : 1;
  }

  /**
   * The same by limits of a ratio where no absolute difference is known: one crossed lowers once,
   * both twice (rules in print: 0.8 and 1.25, or 0.75 and 1.25).
   */
  public static int imprecisionOfRatio(Limits ratio, double lower, double upper) {
    return crossed(ratio, lower) + crossed(ratio, upper);
  }

  private static int crossed(Limits limits, double line) {
    return limits.lower() < line && line < limits.upper() ? 1 : 0;
  }

  /**
   * Levels for inconsistency: a line that a further study may lie on either side of while the
   * average does not, with a fifth of the information on each side (our choice); two such lines
   * lower twice.
   *
   * @param average interval of the average
   * @param further where the true difference of a further study may lie
   * @param lines differences that matter, of gain, of harm, or 0
   * @param values what the studies found, with their part of the information
   */
  public static int inconsistency(
      Limits average, Limits further, List<Double> lines, List<SeriesSeen> values) {
    int levels = 0;
    for (double line : lines) {
      boolean onlyFurther = crossed(further, line) == 1 && crossed(average, line) == 0;
      levels += onlyFurther && onBothSides(line, values) ? 1 : 0;
    }
    return Math.min(2, levels);
  }

  private static boolean onBothSides(double line, List<SeriesSeen> values) {
    double below =
        values.stream()
            .filter(one -> one.value().isPresent() && one.value().getAsDouble() < line)
            .mapToDouble(SeriesSeen::share)
            .sum();
    double above =
        values.stream()
            .filter(one -> one.value().isPresent() && one.value().getAsDouble() > line)
            .mapToDouble(SeriesSeen::share)
            .sum();
    return below >= FIFTH && above >= FIFTH;
  }

  /**
   * Levels by which a large effect raises non-randomised evidence that nothing lowers: a ratio of
   * risks of 2 or a half by one, of 5 or a fifth by two (Guyatt et al., J Clin Epidemiol
   * 2011;64:1311); the nearer limit must pass 1.5, or its inverse (our choice).
   *
   * @param ratio of risks, above 0
   * @param limits its interval
   * @param studies that agree
   * @param threatened whether anything threatens its validity
   */
  public static int raisedByEffect(double ratio, Limits limits, int studies, boolean threatened) {
    double size = ratio >= 1 ? ratio : 1 / ratio;
    double nearer = ratio >= 1 ? limits.lower() : 1 / limits.upper();
    if (threatened || studies < 2 || size < 2 || nearer < 1.5) {
      return 0;
    }
    return size >= 5 ? 2 : 1;
  }

  /**
   * A ratio of odds as one of risks (Zhang &amp; Yu, JAMA 1998;280:1690).
   *
   * @param odds ratio of odds
   * @param risk of the group it is held against, 0 to 1
   */
  public static double riskRatio(double odds, double risk) {
    return odds / (1 - risk + risk * odds);
  }
}
