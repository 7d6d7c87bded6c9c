package gapwise.analysis.pooling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;

/** The model exact-likelihood through the plan's door: parts of a result agree with each other. */
class ExactLikelihoodPlanTest {
  private static final int[][] COUNTS = {{9, 9}, {30, 32}, {7, 9}, {0, 4}, {22, 25}, {5, 8}};

  private static ArrayNode rows(int without) {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < COUNTS.length; i++) {
      if (i != without) {
        Plans.row(rows, "events", COUNTS[i][0], "total", COUNTS[i][1]);
        ((ObjectNode) rows.get(rows.size() - 1)).put("group", i < 3 ? "a" : "b");
      }
    }
    return rows;
  }

  private static ObjectNode exact(ArrayNode rows) {
    return Plans.on(rows, "measure", "proportion", "model", "exact-likelihood");
  }

  @Test
  void leavingOutAStudyIsTheSameAsNotHavingItsRow() {
    JsonNode all = Plans.result(exact(rows(-1)).put("influence", true));
    for (int i = 0; i < COUNTS.length; i++) {
      JsonNode rest = Plans.result(exact(rows(i)));
      JsonNode told = all.at("/influence/leaveOneOut/" + i);
      assertEquals(rest.at("/summary/estimate"), told.get("estimate"));
      assertEquals(rest.at("/heterogeneity/tauSquared"), told.get("tauSquared"));
    }
  }

  /** Lists of refits need no further study: they stay what they are, and quick. */
  @Test
  void leavingOutStudiesNeedsNoFurtherOne() {
    ObjectNode plan = exact(rows(-1)).put("influence", true).put("cumulativeBy", "study");
    JsonNode without = Plans.result(plan);
    JsonNode unknown = Plans.result(plan.put("predictionInterval", "unknown-spread"));
    assertEquals(without.get("influence"), unknown.get("influence"));
    assertEquals(without.get("cumulative"), unknown.get("cumulative"));
  }

  @Test
  void groupsAndTheCumulativeOrderEndWhereTheirStudiesPooledAloneDo() {
    JsonNode all =
        Plans.result(exact(rows(-1)).put("subgroup", "group").put("cumulativeBy", "study"));
    assertEquals(all.at("/summary/estimate"), all.at("/cumulative/5/estimate"));
    assertEquals(0, all.at("/cumulative/1/tauSquared").asDouble());
    double a = all.at("/subgroups/0/summary/estimate").asDouble();
    double b = all.at("/subgroups/1/summary/estimate").asDouble();
    double ea = all.at("/subgroups/0/summary/standardError").asDouble();
    double eb = all.at("/subgroups/1/summary/standardError").asDouble();
    double q = (a - b) * (a - b) / (ea * ea + eb * eb);
    assertEquals(q, all.at("/betweenSubgroups/q").asDouble(), 1e-9 * q);
  }

  /** Quantiles of Student's t on 5 and 4 degrees of freedom from published tables. */
  @Test
  void limitsByStudentsTAndForAFurtherStudyAreMultiplesOfTheErrorsTold() {
    JsonNode told =
        Plans.result(
            exact(rows(-1))
                .put("interval", "t-k-minus-1")
                .put("predictionInterval", "t-k-minus-2"));
    double estimate = told.at("/summary/estimate").asDouble();
    double error = told.at("/summary/standardError").asDouble();
    double tau = told.at("/heterogeneity/tau").asDouble();
    assertEquals(5, told.at("/summary/degreesOfFreedom").asInt());
    assertEquals(estimate - 2.570582 * error, told.at("/summary/lower").asDouble(), 1e-5);
    assertEquals(
        estimate + 2.776445 * Math.hypot(tau, error),
        told.at("/summary/predictionUpper").asDouble(),
        1e-5);
    assertEquals(Plans.result(exact(rows(-1))).at("/summary/estimate").asDouble(), estimate);
  }

  @Test
  void sharesOfTheInformationAddUpAndGrowWithTheSeries() {
    JsonNode told = Plans.result(exact(rows(-1)));
    double sum = 0;
    for (JsonNode study : told.get("studies")) {
      sum += study.get("weightPercent").asDouble();
    }
    assertEquals(100, sum, 1e-9);
    assertTrue(
        told.at("/studies/1/weightPercent").asDouble()
            > told.at("/studies/3/weightPercent").asDouble());
  }

  @Test
  void theExactLikelihoodStandsBesideADoubleArcsine() {
    JsonNode arcsine =
        Plans.result(Plans.on(rows(-1), "measure", "proportion", "scale", "double-arcsine"));
    JsonNode exact = Plans.result(exact(rows(-1)));
    assertTrue(Plans.warnings(arcsine).contains("back-transform-depends-on-n"));
    for (String field : new String[] {"estimate", "lower", "upper"}) {
      assertEquals(
          exact.at("/summary/shown/" + field).asDouble(),
          arcsine.at("/summary/shown/exactLikelihood/" + field).asDouble(),
          1e-12);
    }
  }

  @Test
  void withoutAHighestPointTheLimitStandsAloneAlsoInGroups() {
    ArrayNode rows = Plans.rows();
    for (int n : new int[] {4, 9, 12}) {
      Plans.row(rows, "events", 0, "total", n);
      ((ObjectNode) rows.get(rows.size() - 1)).put("group", "none");
    }
    JsonNode result = Plans.result(exact(rows).put("subgroup", "group"));
    assertEquals(0, result.at("/summary/shown/limit").asDouble(-1));
    assertEquals(0, result.at("/subgroups/0/summary/shown/limit").asDouble(-1));
    assertTrue(result.at("/summary/estimate").isMissingNode());
    assertTrue(Plans.warnings(result).contains("no-events"));
  }
}
