package gapwise.analysis.pooling;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.effect.BackTransform;
import gapwise.numeric.BracketedRoot;
import gapwise.problem.Problems;
import java.util.Set;

/** A value that a plan gives as people read it, and its place on the analysis scale. */
public final class ShownValue {
  /** Measures whose shown values are all above 0. */
  private static final Set<String> ABOVE_ZERO =
      Set.of(
          "odds-ratio", "risk-ratio", "ratio-of-means", "incidence-rate", "incidence-rate-ratio");

  private ShownValue() {}

  /** Notes a value that nothing shown by the plan's measure can have. */
  public static void check(JsonNode plan, double value, String where, Problems problems) {
    String measure = plan.path("measure").asText();
    boolean positive =
        ABOVE_ZERO.contains(measure)
            || plan.path("reportedAs").asText().equals("ratio")
            || (measure.equals("mean") && plan.path("scale").asText().equals("log"));
    if (measure.equals("proportion") && !(value > 0 && value < 1)) {
      problems.add(
          where,
          "out-of-range",
          "found " + value + ", expected a proportion between 0 and 1, such as 0.9 for 90 %");
    } else if (measure.equals("correlation") && !(Math.abs(value) < 1)) {
      problems.add(
          where, "out-of-range", "found " + value + ", expected a correlation between -1 and 1");
    } else if (positive && !(value > 0)) {
      problems.add(
          where,
          "out-of-range",
          "found " + value + ", expected a value above 0, as this measure has");
    }
  }

  /**
   * The value that is carried back to the one shown. The way back never falls, so doubled steps
   * find a bracket, or reach where doubles end.
   */
  public static double onAnalysisScale(double shown, BackTransform back) {
    double lower = -1;
    double upper = 1;
    while (back.apply(lower) > shown && lower > -Double.MAX_VALUE / 2) {
      lower *= 2;
    }
    while (back.apply(upper) < shown && upper < Double.MAX_VALUE / 2) {
      upper *= 2;
    }
    double atLower = back.apply(lower) - shown;
    double atUpper = back.apply(upper) - shown;
    if (!BracketedRoot.brackets(atLower, atUpper)) {
      return atUpper < 0 ? upper : lower;
    }
    return BracketedRoot.find(x -> back.apply(x) - shown, lower, upper).value();
  }
}
