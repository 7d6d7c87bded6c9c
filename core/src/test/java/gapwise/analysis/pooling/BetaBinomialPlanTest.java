package gapwise.analysis.pooling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The likelihood beta-binomial through the plan's door. */
class BetaBinomialPlanTest {
  /** Of proportions-full-arms, whose values by SciPy are in BetaBinomialTest. */
  private static final int[][] COUNTS = {
    {9, 9}, {12, 12}, {30, 32}, {7, 9}, {18, 20}, {0, 4}, {22, 25}, {14, 14}, {5, 8}, {41, 44}
  };

  private static ObjectNode plan(int without) {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < COUNTS.length; i++) {
      if (i != without) {
        Plans.row(rows, "events", COUNTS[i][0], "total", COUNTS[i][1]);
        ((ObjectNode) rows.get(rows.size() - 1)).put("group", i < 4 ? "a" : "b");
      }
    }
    return on(rows);
  }

  private static ObjectNode on(ArrayNode rows) {
    return Plans.on(rows, "measure", "proportion", "model", "exact-likelihood")
        .put("likelihood", "beta-binomial");
  }

  @Test
  void tellsTheMeanShareTheCorrelationAndWhereAFurtherCentreLies() {
    ObjectNode plan = plan(-1);
    plan.putArray("places").add(0.5);
    JsonNode told = Plans.result(plan);
    assertEquals("fitted-beta", told.at("/plan/predictionInterval").asText());
    assertTrue(Plans.warnings(told).contains("prediction-interval-too-narrow"));
    assertFalse(told.at("/plan").has("quadraturePoints"));
    assertEquals(1.540185459, told.at("/summary/estimate").asDouble(), 1e-7);
    assertEquals(0.535736277, told.at("/summary/standardError").asDouble(), 1e-7);
    JsonNode shown = told.at("/summary/shown");
    assertEquals(0.823491684, shown.get("average").asDouble(), 1e-8);
    assertEquals(shown.get("estimate").asDouble(), shown.get("average").asDouble(), 1e-15);
    assertEquals(shown.get("lower").asDouble(), shown.get("averageLower").asDouble(), 1e-15);
    assertEquals(0.341936420, shown.get("predictionLower").asDouble(), 1e-7);
    assertEquals(0.999407212, shown.get("predictionUpper").asDouble(), 1e-7);
    assertEquals(0.2318149274, told.at("/heterogeneity/intraclassCorrelation").asDouble(), 1e-8);
    assertFalse(told.get("heterogeneity").has("tauSquared"));
    assertEquals(0.075946827, told.at("/places/0/newStudiesBelow").asDouble(), 1e-7);
    assertEquals(1, told.at("/places/0/studiesBelow").asInt());
    assertEquals(-21.35715759, told.at("/fit/logLikelihood").asDouble(), 1e-7);
    // 44/(1 + 43 rho) over the sum of such: by hand from the correlation above.
    double sum = 0;
    for (int[] one : COUNTS) {
      sum += one[1] / (1 + (one[1] - 1) * 0.2318149274);
    }
    assertEquals(
        100 * 44 / (1 + 43 * 0.2318149274) / sum,
        told.at("/studies/9/weightPercent").asDouble(),
        1e-5);
  }

  /** The quantile of Student's t on 9 degrees of freedom for 95 %, 2.262157, from tables. */
  @Test
  void limitsByStudentsTAreMultiplesOfTheError() {
    JsonNode told = Plans.result(plan(-1).put("interval", "t-k-minus-1"));
    double half = told.at("/summary/upper").asDouble() - told.at("/summary/estimate").asDouble();
    assertEquals(2.262157 * 0.535736277, half, 1e-6);
    assertFalse(told.get("summary").has("predictionLower"));
  }

  @Test
  void withoutAStudyAndInOrderItIsThePoolingOfTheRest() {
    JsonNode all =
        Plans.result(
            plan(-1).put("influence", true).put("cumulativeBy", "study").put("subgroup", "group"));
    for (int i = 0; i < COUNTS.length; i++) {
      JsonNode told = all.at("/influence/leaveOneOut/" + i);
      assertEquals(Plans.result(plan(i)).at("/summary/estimate"), told.get("estimate"));
    }
    assertEquals(all.at("/summary/estimate"), all.at("/cumulative/9/estimate"));
    assertTrue(all.at("/subgroups/1/heterogeneity").has("intraclassCorrelation"));
    assertEquals(1, all.at("/betweenSubgroups/degreesOfFreedom").asInt());
  }

  @Test
  void oneStudyKeepsItsOwnShareAndWhatHasNoTopIsSaid() {
    ArrayNode one = Plans.rows();
    Plans.row(one, "events", 3, "total", 10);
    JsonNode told = Plans.result(on(one));
    assertEquals(Math.log(3.0 / 7), told.at("/summary/estimate").asDouble(), 1e-12);
    assertFalse(told.get("heterogeneity").has("intraclassCorrelation"));
    assertTrue(Plans.warnings(told).contains("single-study"));
    ArrayNode ends = Plans.rows();
    Plans.row(ends, "events", 0, "total", 10);
    Plans.row(ends, "events", 7, "total", 7);
    JsonNode none = Plans.result(on(ends));
    assertTrue(Plans.warnings(none).contains("estimate-at-limit"));
    assertFalse(none.has("summary") && none.get("summary").has("estimate"));
    ArrayNode nothing = Plans.rows();
    Plans.row(nothing, "events", 0, "total", 10);
    Plans.row(nothing, "events", 0, "total", 7);
    JsonNode without = Plans.result(on(nothing));
    assertTrue(Plans.warnings(without).contains("no-events"));
    assertEquals(0, without.at("/summary/shown/limit").asDouble(1));
  }

  @Test
  void aCorrelationOfZeroIsSaid() {
    ArrayNode rows = Plans.rows();
    for (int[] one : new int[][] {{6, 20}, {9, 30}, {12, 40}, {3, 10}}) {
      Plans.row(rows, "events", one[0], "total", one[1]);
    }
    JsonNode told = Plans.result(on(rows));
    assertTrue(Plans.warnings(told).contains("intraclass-correlation-at-zero"));
    assertEquals(0, told.at("/heterogeneity/intraclassCorrelation").asDouble(1));
    assertEquals(0.3, told.at("/summary/shown/average").asDouble(), 1e-12);
  }

  @Test
  void whatDoesNotGoTogetherIsRefused() {
    ArrayNode tables = Plans.rows();
    Plans.row(
        tables,
        "intervention.events",
        1,
        "intervention.total",
        9,
        "comparator.events",
        2,
        "comparator.total",
        9);
    assertEquals(
        List.of("likelihood model-not-for-measure"),
        Plans.problems(
            Plans.on(
                tables,
                "measure",
                "odds-ratio",
                "model",
                "exact-likelihood",
                "likelihood",
                "beta-binomial")));
    assertEquals(
        List.of("predictionInterval interval-not-for-model"),
        Plans.problems(plan(-1).put("predictionInterval", "t-k-minus-2")));
    assertEquals(
        List.of("predictionInterval interval-not-for-model"),
        Plans.problems(
            plan(-1).put("model", "random-effects").put("predictionInterval", "fitted-beta")));
    ObjectNode moderated = plan(-1);
    moderated.putArray("moderators").add("group");
    assertEquals(List.of("likelihood part-not-for-model"), Plans.problems(moderated));
    assertTrue(
        Plans.warnings(Plans.result(plan(-1).put("quadraturePoints", 9)))
            .contains("setting-not-used"));
  }
}
