package gapwise.analysis.pooling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What the contract settles about measures and their zero cells, medians, and pooling of counts.
 */
class MeasuresTest {
  private static ArrayNode tables(int[]... tables) {
    ArrayNode rows = Plans.rows();
    for (int[] t : tables) {
      Plans.row(
          rows,
          "intervention.events",
          t[0],
          "intervention.total",
          t[1],
          "comparator.events",
          t[2],
          "comparator.total",
          t[3]);
    }
    return rows;
  }

  private static ObjectNode emptyCells(ObjectNode plan, String tables, String uninformative) {
    plan.putObject("continuityCorrection").put("tables", tables);
    plan.put("uninformativeStudies", uninformative);
    return plan;
  }

  @Test
  void halfAPatientIsAddedToAllFourCellsOfAStudyWithAZeroOnly() {
    ArrayNode rows = tables(new int[] {0, 10, 5, 10}, new int[] {2, 10, 5, 10});
    JsonNode result = Plans.result(Plans.on(rows, "measure", "odds-ratio"));
    // log((0.5 * 5.5)/(10.5 * 5.5)) and log((2 * 5)/(8 * 5)), worked by hand
    assertEquals(Math.log(0.5 / 10.5), result.at("/studies/0/effect").asDouble(), 1e-14);
    assertEquals(1 / 0.5 + 1 / 10.5 + 2 / 5.5, result.at("/studies/0/variance").asDouble(), 1e-14);
    assertEquals(Math.log(0.25), result.at("/studies/1/effect").asDouble(), 1e-14);
    assertTrue(Plans.warnings(result).contains("zero-cells-corrected"));
  }

  @ParameterizedTest
  @CsvSource({
    "odds-ratio,leave-out,1",
    "risk-ratio,leave-out,2",
    "odds-ratio,keep,3",
    "risk-difference,leave-out,3",
  })
  void studiesWithoutInformationAreLeftOutByMeasure(
      String measure, String uninformative, int pooled) {
    // no event anywhere; only events; some of both
    ArrayNode rows =
        tables(new int[] {0, 10, 0, 12}, new int[] {10, 10, 12, 12}, new int[] {3, 10, 6, 12});
    ObjectNode plan =
        emptyCells(
            Plans.on(rows, "measure", measure, "model", "common-effect"),
            "with-an-empty-cell",
            uninformative);
    JsonNode result = Plans.result(plan);
    if (measure.equals("risk-difference")) {
      assertTrue(Plans.warnings(result).contains("zero-variance"));
      return;
    }
    assertEquals(
        pooled,
        IntStream.range(0, 3).filter(i -> result.at("/studies/" + i).has("weightPercent")).count());
    assertEquals(3, result.get("studies").size(), "rows left out are still listed");
  }

  @Test
  void aStudyLeftOutAddsNothingToOthersUnderAllIfAnyZero() {
    ArrayNode rows = tables(new int[] {0, 10, 0, 12}, new int[] {3, 10, 6, 12});
    JsonNode left =
        Plans.result(
            emptyCells(
                Plans.on(rows, "measure", "odds-ratio"), "every-if-one-is-empty", "leave-out"));
    assertEquals(
        Math.log(3 / 7.0) - Math.log(6 / 6.0), left.at("/studies/1/effect").asDouble(), 1e-14);
    JsonNode kept =
        Plans.result(
            emptyCells(Plans.on(rows, "measure", "odds-ratio"), "every-if-one-is-empty", "keep"));
    assertEquals(
        Math.log(3.5 / 7.5) - Math.log(6.5 / 6.5), kept.at("/studies/1/effect").asDouble(), 1e-14);
  }

  @Test
  void withNothingAddedAStudyWhoseRatioIsInfiniteIsLeftOutAndSaidSo() {
    ArrayNode rows = tables(new int[] {0, 10, 5, 10}, new int[] {2, 10, 5, 10});
    JsonNode result =
        Plans.result(emptyCells(Plans.on(rows, "measure", "odds-ratio"), "none", "leave-out"));
    assertFalse(result.at("/studies/0").has("effect"));
    assertTrue(Plans.warnings(result).contains("study-left-out"));
    assertTrue(Plans.warnings(result).contains("single-study"));
  }

  @ParameterizedTest
  @CsvSource({"odds-ratio", "risk-ratio", "risk-difference"})
  void mantelHaenszelUsesStudiesWithAZeroAsTheyAreAndMirrorsWithTheGroups(String measure) {
    ArrayNode rows =
        tables(new int[] {0, 40, 3, 38}, new int[] {4, 50, 7, 52}, new int[] {2, 20, 5, 21});
    ArrayNode swapped =
        tables(new int[] {3, 38, 0, 40}, new int[] {7, 52, 4, 50}, new int[] {5, 21, 2, 20});
    JsonNode one = mantelHaenszel(rows, measure);
    JsonNode other = mantelHaenszel(swapped, measure);
    assertEquals(
        one.at("/summary/estimate").asDouble(), -other.at("/summary/estimate").asDouble(), 1e-12);
    assertEquals(
        one.at("/summary/standardError").asDouble(),
        other.at("/summary/standardError").asDouble(),
        1e-12);
    assertFalse(Plans.warnings(one).contains("zero-cells-corrected"));
    double weight = 0;
    for (JsonNode study : one.get("studies")) {
      weight += study.get("weightPercent").asDouble();
    }
    assertEquals(100, weight, 1e-9);
  }

  private static JsonNode mantelHaenszel(ArrayNode rows, String measure) {
    return Plans.result(
        Plans.on(rows, "measure", measure, "model", "common-effect", "pooling", "mantel-haenszel"));
  }

  @Test
  void aGroupWithoutEventsInEveryStudyPutsTheMantelHaenszelRatioAtItsLimit() {
    ArrayNode rows = tables(new int[] {0, 10, 5, 10}, new int[] {0, 9, 4, 12});
    JsonNode result = mantelHaenszel(rows, "odds-ratio");
    assertFalse(result.has("summary"));
    assertTrue(Plans.warnings(result).contains("estimate-at-limit"));
  }

  @Test
  void aMedianStandsInForAMeanWithAWarningThatNamesTheStudy() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "n", 40, "median", 7.5, "q1", 5, "q3", 9);
    Plans.row(rows, "n", 30, "mean", 8, "sd", 2.5);
    JsonNode result = Plans.result(Plans.on(rows, "measure", "mean"));
    // Row 5 of the published dataset medians-to-means: Luo 2018 mean, Wan 2014 SD.
    assertEquals(7.145125, result.at("/studies/0/effect").asDouble(), 1e-9);
    assertEquals(
        3.07571960591768 * 3.07571960591768 / 40,
        result.at("/studies/0/variance").asDouble(),
        1e-9);
    JsonNode warning = result.get("warnings").get(0);
    assertEquals("converted-from-median", warning.get("code").asText());
    assertEquals("Study 1", warning.get("study").asText());
  }

  @Test
  void halfARangeIsNoRangeAndNumbersOutOfOrderAreWrong() {
    ArrayNode half = Plans.rows();
    Plans.row(half, "n", 40, "median", 7.5, "min", 5);
    JsonNode result = Plans.result(Plans.on(half, "measure", "mean"));
    assertTrue(Plans.warnings(result).contains("missing-value"));
    ArrayNode order = Plans.rows();
    Plans.row(order, "n", 40, "median", 7.5, "q1", 8, "q3", 9);
    assertEquals(
        List.of("row 1, column median out-of-order"),
        Plans.problems(Plans.on(order, "measure", "mean")));
  }

  @Test
  void limitsGiveTheStandardErrorOnTheLogScaleForRatios() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 2, "lower", 1, "upper", 4);
    Plans.row(rows, "effect", 1, "lower", 0.5, "upper", 2);
    JsonNode result =
        Plans.result(Plans.on(rows, "measure", "reported-effect", "reportedAs", "ratio"));
    // (log 4 - log 1)/(2 * 1.959963984540054)
    double error = Math.log(4) / (2 * 1.959963984540054);
    assertEquals(error, result.at("/studies/0/standardError").asDouble(), 1e-14);
    assertEquals(2, result.at("/studies/0/shown/estimate").asDouble(), 1e-14);
    assertEquals(1, result.at("/studies/0/shown/lower").asDouble(), 1e-13);
  }

  @Test
  void anEffectOutsideItsLimitsIsWrong() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 5, "lower", 1, "upper", 4);
    assertEquals(
        List.of("row 1, column effect out-of-order"),
        Plans.problems(Plans.on(rows, "measure", "reported-effect")));
  }

  @Test
  void groupsOfOneStudyHaveNoSpreadAndAreSaidToBeSingle() {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 5; i++) {
      Plans.row(rows, "events", 3 + i, "total", 12);
      ((ObjectNode) rows.get(i)).put("method", i < 4 ? "transport" : "membrane");
    }
    ((ObjectNode) rows.get(0)).put("method", "");
    JsonNode result =
        Plans.result(Plans.on(rows, "subgroup", "method", "subgroupVariance", "separate"));
    assertEquals(3, result.at("/subgroups/0/studies").asInt());
    assertEquals(0, result.at("/subgroups/1/heterogeneity/tauSquared").asDouble());
    assertTrue(Plans.warnings(result).containsAll(List.of("single-study", "missing-value")));
    assertEquals(1, result.at("/betweenSubgroups/degreesOfFreedom").asInt());
    assertFalse(result.at("/studies/0").has("weightPercent"));
  }

  @Test
  void oneCommonVarianceNeedsMoreStudiesThanGroups() {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 3; i++) {
      Plans.row(rows, "events", 3 + i, "total", 12);
      ((ObjectNode) rows.get(i)).put("method", "m" + i);
    }
    JsonNode result =
        Plans.result(Plans.on(rows, "subgroup", "method", "subgroupVariance", "common"));
    assertTrue(Plans.warnings(result).contains("too-few-studies"));
    assertFalse(result.at("/betweenSubgroups").has("tauSquared"));
  }

  @Test
  void withoutOneOfTwoStudiesTheOtherStandsAlone() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "n", 10, "mean", 4, "sd", 1);
    Plans.row(rows, "n", 20, "mean", 6, "sd", 2);
    ObjectNode plan = Plans.on(rows, "measure", "mean", "cumulativeBy", "n");
    plan.put("influence", true);
    JsonNode result = Plans.result(plan);
    assertEquals(6, result.at("/influence/leaveOneOut/0/estimate").asDouble(), 1e-14);
    assertEquals(0, result.at("/influence/leaveOneOut/0/tauSquared").asDouble());
    assertEquals(4, result.at("/cumulative/0/estimate").asDouble(), 1e-14);
    assertEquals(
        result.at("/summary/estimate").asDouble(), result.at("/cumulative/1/estimate").asDouble());
  }
}
