package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;
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
 * Limits that studies report. z of 95 % is 1.959963984540054, of 99 % 2.575829303548901, of 90 %
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
}
