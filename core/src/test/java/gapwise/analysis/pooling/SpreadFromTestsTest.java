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

/**
 * Rows that report a test in the place of a spread. The example of the Cochrane Handbook, 6.5.2.3:
 * 25 and 22 patients, a difference of 3.8 with p = 0.008, hence t 2.78, a standard error of 1.37
 * and a standard deviation of 4.69 (the last two as recalled). Digits beyond by SciPy, {@code
 * stats.t.isf(0.004, 45)} = 2.775545369.
 */
class SpreadFromTestsTest {
  private static final double T = 2.775545369;
  private static final double ERROR = 3.8 / T;
  private static final double SD = ERROR / Math.sqrt(1.0 / 25 + 1.0 / 22);

  private static ObjectNode row(ArrayNode rows, Object... more) {
    Plans.row(
        rows,
        "intervention.n",
        25,
        "intervention.mean",
        13.8,
        "comparator.n",
        22,
        "comparator.mean",
        10);
    ObjectNode row = (ObjectNode) rows.get(rows.size() - 1);
    for (int i = 0; i < more.length; i += 2) {
      row.put((String) more[i], ((Number) more[i + 1]).doubleValue());
    }
    return row;
  }

  private static JsonNode result(ArrayNode rows, String measure) {
    return Plans.result(Plans.on(rows, "measure", measure));
  }

  private static JsonNode first(ArrayNode rows, String measure) {
    return result(rows, measure).at("/studies/0");
  }

  @Test
  void thePValueOfADifferenceGivesTheStandardErrorOfTheHandbook() {
    ArrayNode rows = Plans.rows();
    row(rows, "pValue", 0.008);
    JsonNode told = result(rows, "mean-difference");
    assertEquals(1.37, told.at("/studies/0/standardError").asDouble(), 0.005);
    assertEquals(ERROR, told.at("/studies/0/standardError").asDouble(), 1e-7);
    assertEquals(4.69, SD, 0.01);
    assertTrue(Plans.warnings(told).contains("converted-from-p-value"));
  }

  @Test
  void theStatisticIsTakenBeforeThePValueWhateverItsSign() {
    ArrayNode rows = Plans.rows();
    row(rows, "tStatistic", -T, "pValue", 0.5);
    JsonNode told = result(rows, "mean-difference");
    assertEquals(ERROR, told.at("/studies/0/standardError").asDouble(), 1e-9);
    assertTrue(Plans.warnings(told).contains("converted-from-t-statistic"));
    assertFalse(Plans.warnings(told).contains("converted-from-p-value"));
  }

  @Test
  void otherMeasuresAreThoseOfARowThatReportsTheStandardDeviationInBothGroups() {
    for (String measure :
        List.of("mean-difference", "standardised-mean-difference", "ratio-of-means")) {
      ArrayNode tested = Plans.rows();
      row(tested, "pValue", 0.008);
      ArrayNode reported = Plans.rows();
      row(reported, "intervention.sd", SD, "comparator.sd", SD);
      JsonNode one = first(tested, measure);
      JsonNode other = first(reported, measure);
      assertEquals(other.get("effect").asDouble(), one.get("effect").asDouble(), 1e-7, measure);
      assertEquals(other.get("variance").asDouble(), one.get("variance").asDouble(), 1e-7, measure);
    }
  }

  @Test
  void aStandardDeviationThatIsReportedWins() {
    ArrayNode rows = Plans.rows();
    row(rows, "pValue", 0.008, "intervention.sd", 3, "comparator.sd", 4);
    JsonNode told = result(rows, "mean-difference");
    assertEquals(9.0 / 25 + 16.0 / 22, told.at("/studies/0/variance").asDouble(), 1e-12);
    assertFalse(Plans.warnings(told).contains("converted-from-p-value"));
    ArrayNode one = Plans.rows();
    row(one, "pValue", 0.008, "intervention.sd", 3);
    assertFalse(first(one, "mean-difference").has("variance"));
  }

  @Test
  void aTestThatTellsNothingIsSaidAndTheRowNotPooled() {
    for (String measure :
        List.of("mean-difference", "standardised-mean-difference", "ratio-of-means")) {
      ArrayNode rows = Plans.rows();
      row(rows, "pValue", 1);
      row(rows, "tStatistic", 0);
      row(rows, "pValue", 0.4).put("comparator.mean", 13.8);
      JsonNode told = result(rows, measure);
      assertEquals(
          List.of(
              "missing-standard-deviation",
              "missing-standard-deviation",
              "missing-standard-deviation"),
          Plans.warnings(told).subList(0, 3));
      assertTrue(told.at("/warnings/0/message").asText().contains("p value of 1"));
      assertFalse(told.has("summary") && told.get("summary").has("estimate"), measure);
    }
  }

  @Test
  void aBoundIsListedWithoutWeightAndKeepsNoOtherRowFromBeingPooled() {
    for (String bound : List.of("<0.05", "0")) {
      ArrayNode rows = Plans.rows();
      row(rows, "intervention.sd", 3, "comparator.sd", 4);
      ObjectNode bounded = row(rows);
      if (bound.equals("0")) {
        bounded.put("pValue", 0.0);
      } else {
        bounded.put("pValue", bound);
      }
      JsonNode told = result(rows, "mean-difference");
      assertTrue(Plans.warnings(told).contains("missing-standard-deviation"), bound);
      assertTrue(told.at("/summary").has("estimate"), bound);
    }
  }

  @Test
  void whatIsNoPValueIsRefusedInWords() {
    for (double p : new double[] {-0.1, 1.2}) {
      ArrayNode other = Plans.rows();
      row(other, "pValue", p);
      List<String> problems = Plans.problems(Plans.on(other, "measure", "mean-difference"));
      assertTrue(problems.get(0).endsWith("out-of-range"), problems.toString());
    }
    ArrayNode unused = Plans.rows();
    row(unused, "intervention.sd", 3, "comparator.sd", 4).put("pValue", "<0.05");
    assertTrue(first(unused, "mean-difference").has("variance"));
  }

  /**
   * A risk difference of 0.03 with p = 0.008: z 2.652, standard error 0.011 (Cochrane Handbook,
   * 6.3.1, as recalled); z by SciPy, {@code stats.norm.isf(0.004)} = 2.6520698.
   */
  @Test
  void aReportedEffectWithAPValueHasTheStandardErrorOfTheNormalDistribution() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 0.03, "pValue", 0.008);
    JsonNode told = result(rows, "reported-effect");
    assertEquals(0.011, told.at("/studies/0/standardError").asDouble(), 0.0005);
    assertEquals(0.03 / 2.6520698, told.at("/studies/0/standardError").asDouble(), 1e-9);
    assertTrue(Plans.warnings(told).contains("converted-from-p-value-of-effect"));
  }

  @Test
  void ofARatioTheLogIsSetAgainstItsPValueAndOneTellsNothing() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 0.5, "pValue", 1e-20);
    Plans.row(rows, "effect", 1, "pValue", 0.5);
    Plans.row(rows, "effect", 2, "standardError", 0.3, "pValue", 0.9);
    JsonNode told =
        Plans.result(Plans.on(rows, "measure", "reported-effect", "reportedAs", "ratio"));
    // stats.norm.isf(5e-21) = 9.336044849 by SciPy: a p value so small keeps its digits.
    assertEquals(Math.log(2) / 9.336044849, told.at("/studies/0/standardError").asDouble(), 1e-8);
    assertFalse(told.at("/studies/1").has("standardError"));
    assertEquals(0.3, told.at("/studies/2/standardError").asDouble(), 1e-15);
    assertTrue(Plans.warnings(told).contains("missing-value"));
  }
}
