package gapwise.analysis.bayesian;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Posteriors of means. Numbers by NumPy and SciPy over a dense grid of middle and tau,
 * core/src/test/reference/mean_posteriors.py.
 */
class MeanPosteriorsTest {
  /** As far as the grid goes. */
  private static final double DIGITS = 2e-9;

  /** Months to union. */
  private static final double[][] MONTHS = {{12, 9.1, 4.0}, {20, 11.5, 5.2}, {9, 7.8, 3.1}};

  /** Difference in length of the legs in cm. */
  private static final double[][] CENTIMETRES = {{14, 0.8, 0.9}, {22, 1.4, 1.1}};

  private static ObjectNode plan(double[][] series, String scale) {
    ArrayNode rows = Plans.rows();
    for (double[] one : series) {
      Plans.row(rows, "n", one[0], "mean", one[1], "sd", one[2]);
    }
    return Plans.on(rows, "measure", "mean", "scale", scale, "model", "bayesian");
  }

  private static void holds(double lower, double median, double upper, JsonNode told) {
    assertEquals(lower, told.get("lower").asDouble(), DIGITS, told::toString);
    assertEquals(median, told.get("median").asDouble(), DIGITS, told::toString);
    assertEquals(upper, told.get("upper").asDouble(), DIGITS, told::toString);
  }

  @Test
  void logarithmsHaveMiddleAverageAndAFurtherCentre() {
    JsonNode result = Plans.result(plan(MONTHS, "log"));
    assertEquals(0.5, result.at("/plan/prior/tau/halfNormal").asDouble());
    holds(1.8143999332223935, 2.2509167673523716, 2.6607743974580806, result.at("/bayesian/mean"));
    holds(
        1.41555385590759,
        2.2532133870865443,
        3.0592600094703952,
        result.at("/bayesian/predictive"));
    JsonNode average = result.at("/bayesian/average");
    assertEquals(1.931727635776323, Math.log(average.get("lower").asDouble()), DIGITS);
    assertEquals(2.2792600884848553, Math.log(average.get("median").asDouble()), DIGITS);
    assertEquals(2.8309443937741974, Math.log(average.get("upper").asDouble()), DIGITS);
    assertEquals(average.get("median"), result.at("/summary/shown/average"));
    assertEquals(average.get("lower"), result.at("/summary/shown/averageLower"));
    assertEquals(average.get("upper"), result.at("/summary/shown/averageUpper"));
  }

  @Test
  void oneSeriesHasAnAverageThatRestsOnThePrior() {
    JsonNode result = Plans.result(plan(new double[][] {MONTHS[0]}, "log"));
    JsonNode average = result.at("/bayesian/average");
    assertEquals(1.3804510527037186, Math.log(average.get("lower").asDouble()), DIGITS);
    assertEquals(2.262973590643326, Math.log(average.get("median").asDouble()), DIGITS);
    assertEquals(3.6851511760761086, Math.log(average.get("upper").asDouble()), DIGITS);
    assertTrue(Plans.warnings(result).contains("posterior-is-prior"), result::toString);
    assertFalse(result.at("/bayesian").has("predictive"), result::toString);
  }

  @Test
  void meansInTheirUnitTakeTheScaleFromTheirPatients() {
    ObjectNode plan = plan(CENTIMETRES, "raw");
    plan.putArray("priorSensitivity").addObject().put("halfNormalOfStandardDeviation", 0.5);
    JsonNode result = Plans.result(plan);
    assertEquals(1, result.at("/plan/prior/tau/halfNormalOfStandardDeviation").asDouble());
    assertEquals(1.0281336603425704, result.at("/bayesian/priorScale").asDouble(), 1e-14);
    holds(
        -0.20185379996564298, 1.1031836198015752, 2.4025429349081153, result.at("/bayesian/mean"));
    holds(
        -1.1211611210358297,
        1.1035934135854932,
        3.321826049203941,
        result.at("/bayesian/predictive"));
    holds(
        0.3074296947832308,
        1.1038743643103668,
        1.8946242724516915,
        result.at("/bayesian/priorSensitivity/0"));
    assertFalse(result.at("/bayesian").has("average"), "middle and average are one");
    assertFalse(Plans.warnings(result).contains("prior-has-a-unit"), result::toString);
  }

  /** What is told in metres is told in centimetres too, which half a metre as scale is not. */
  @Test
  void anotherUnitGivesTheSameAnswer() {
    JsonNode one = Plans.result(plan(CENTIMETRES, "raw")).at("/bayesian/mean");
    for (double unit : new double[] {1e-6, 0.01, 1e8}) {
      double[][] other = new double[CENTIMETRES.length][];
      for (int i = 0; i < other.length; i++) {
        double[] series = CENTIMETRES[i];
        other[i] = new double[] {series[0], unit * series[1], unit * series[2]};
      }
      JsonNode told = Plans.result(plan(other, "raw")).at("/bayesian/mean");
      for (String field : List.of("lower", "median", "upper", "sd")) {
        double expected = unit * one.get(field).asDouble();
        assertEquals(expected, told.get(field).asDouble(), 1e-9 * Math.abs(expected));
      }
    }
  }

  /** The prior of groups is that of their own series, so each has the answer it has alone. */
  @Test
  void aGroupHasTheAnswerItHasAlone() {
    ArrayNode rows = Plans.rows();
    double[][] series = {CENTIMETRES[0], CENTIMETRES[1], {10, 3.0, 4.0}, {18, 2.0, 3.5}};
    for (int i = 0; i < series.length; i++) {
      double[] one = series[i];
      Plans.row(rows, "n", one[0], "mean", one[1], "sd", one[2]);
      ((ObjectNode) rows.get(i)).put("group", i < 2 ? "A" : "B");
    }
    ObjectNode plan =
        Plans.on(rows, "measure", "mean", "scale", "raw", "model", "bayesian", "subgroup", "group");
    JsonNode summary = Plans.result(plan).at("/subgroups/0/summary");
    assertEquals(1.1031836198015752, summary.get("estimate").asDouble(), DIGITS);
    assertEquals(-0.20185379996564298, summary.get("lower").asDouble(), DIGITS);
  }

  @Test
  void aPriorInStandardDeviationsIsRefusedWhereEffectsHaveNone() {
    ObjectNode plan = plan(MONTHS, "log");
    plan.putObject("prior").putObject("tau").put("halfNormalOfStandardDeviation", 1);
    assertEquals(List.of("prior.tau prior-not-for-measure"), Plans.problems(plan));
  }

  @Test
  void scalesBeyondAllNumbersGiveAReasonAndNoAnswer() {
    for (double deviations : new double[] {1e-320, 1e308}) {
      ObjectNode plan = plan(new double[][] {{8, 1, 1e-9}, {9, 2, 1e9}}, "raw");
      plan.putObject("prior").putObject("tau").put("halfNormalOfStandardDeviation", deviations);
      JsonNode result = Plans.result(plan);
      assertFalse(result.has("bayesian"), result::toString);
      assertTrue(Plans.warnings(result).contains("number-out-of-range"), result::toString);
    }
  }

  @Test
  void anAverageBeyondAllNumbersIsLeftOutAndTheMiddleStands() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "n", 36, "mean", 18.45, "sd", 1.8);
    Plans.row(rows, "n", 30, "mean", 14.62, "sd", 0.3);
    ObjectNode plan = Plans.on(rows, "measure", "mean", "scale", "log", "model", "bayesian");
    ObjectNode prior = plan.putObject("prior");
    prior.put("tau", "flat").putObject("mean").putArray("normal").add(0).add(2);
    JsonNode result = Plans.result(plan);
    assertTrue(result.at("/summary/lower").isNumber(), result::toString);
    assertFalse(result.at("/summary/shown").has("average"));
  }
}
