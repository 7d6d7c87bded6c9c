package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Limits that studies report, from which standard errors are worked out, and effects that are not
 * the middle of their limits. z of 95 % is 1.959963984540054, of 99 % 2.575829303548901, of 90 %
 * 1.6448536269514722 (base R, {@code qnorm}).
 */
class ReportedLimitsTest {
  private static ArrayNode rows() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 1.5, "lower", 1.0, "upper", 2.25);
    Plans.row(rows, "effect", 0.8, "lower", 0.5, "upper", 1.28);
    Plans.row(rows, "effect", 1.2, "lower", 0.9, "upper", 1.6);
    return rows;
  }

  private static ObjectNode plan(ArrayNode rows) {
    return Plans.on(rows, "measure", "reported-effect", "reportedAs", "ratio");
  }

  private static double firstError(JsonNode result) {
    return result.at("/studies/0/standardError").asDouble();
  }

  @Test
  void areThoseOf95PercentWhateverTheLevelOfTheAnswer() {
    double expected = Math.log(2.25) / (2 * 1.959963984540054);
    JsonNode at99 = Plans.result(plan(rows()).put("level", 0.99));
    assertEquals(expected, firstError(Plans.result(plan(rows()))), 1e-14);
    assertEquals(expected, firstError(at99), 1e-14);
    assertEquals(
        Math.log(1.5) + 2.575829303548901 * expected,
        at99.at("/studies/0/upper").asDouble(),
        1e-13,
        "the answer is told at its own level");
    assertEquals(0.95, at99.at("/plan/limitsLevel").asDouble());
  }

  @Test
  void areReadAtTheLevelThatThePlanOrTheirRowNames() {
    ArrayNode rows = rows();
    ((ObjectNode) rows.get(1)).put("limitsLevel", 0.99);
    JsonNode result = Plans.result(plan(rows).put("limitsLevel", 0.9));
    assertEquals(Math.log(2.25) / (2 * 1.6448536269514722), firstError(result), 1e-14);
    assertEquals(
        Math.log(1.28 / 0.5) / (2 * 2.575829303548901),
        result.at("/studies/1/standardError").asDouble(),
        1e-14);
  }

  @Test
  void ofALevelThatIsNoneAreRefusedAtTheirRow() {
    ArrayNode rows = rows();
    ((ObjectNode) rows.get(1)).put("limitsLevel", 95);
    List<String> problems = Plans.problems(plan(rows));
    assertEquals(1, problems.size());
    assertTrue(problems.get(0).endsWith("column limitsLevel out-of-range"), problems::toString);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 0.8, 0.9, 0.999})
  void giveTheSameErrorsUnderEveryModelAndLevel(double level) {
    for (String model : new String[] {"random-effects", "common-effect", "bayesian"}) {
      JsonNode result = Plans.result(plan(rows()).put("model", model).put("level", level));
      assertEquals(Math.log(2.25) / (2 * 1.959963984540054), firstError(result), 1e-14, model);
    }
  }

  @Test
  void areDoubtedWhereTheEffectLiesFarFromTheirMiddle() {
    ArrayNode rows = rows();
    assertFalse(Plans.warnings(Plans.result(plan(rows))).contains("limits-off-centre"));
    // log 1.5 = 0.405 between log 0.2 = -1.609 and log 1.9 = 0.642, whose middle is -0.484.
    ((ObjectNode) rows.get(0)).put("lower", 0.2).put("upper", 1.9);
    JsonNode doubted = Plans.result(plan(rows));
    assertEquals(
        List.of("Study 1"),
        doubted
            .get("warnings")
            .valueStream()
            .filter(one -> one.get("code").asText().equals("limits-off-centre"))
            .map(one -> one.get("study").asText())
            .toList());
  }

  @Test
  void ofRatiosGivenAsIfTheyWereDifferencesAreDoubted() {
    // 1.5 within 1.0 to 2.25: the middle of a ratio, and 0.2 of half the width beside that of a
    // difference; 2 within 1 to 4 is 1/3 beside it.
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 2, "lower", 1, "upper", 4);
    Plans.row(rows, "effect", 2.5, "lower", 1, "upper", 4);
    ObjectNode asDifferences = Plans.on(rows, "measure", "reported-effect");
    assertTrue(Plans.warnings(Plans.result(asDifferences)).contains("limits-off-centre"));
  }

  @Test
  void areNotDoubtedWhereTheyGiveNoVariance() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 2, "lower", 1, "upper", 4, "variance", 0.5);
    Plans.row(rows, "effect", 2.5, "variance", 0.5);
    JsonNode result = Plans.result(Plans.on(rows, "measure", "reported-effect"));
    assertFalse(Plans.warnings(result).contains("limits-off-centre"));
  }
}
