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

/** An effect that is not the middle of its limits, from which its standard error is worked out. */
class LimitsOffCentreTest {
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

  @Test
  void farFromTheMiddleOfWhichTheEffectLiesAreDoubted() {
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
  void thatGiveNoVarianceAreNotDoubted() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "effect", 2, "lower", 1, "upper", 4, "variance", 0.5);
    Plans.row(rows, "effect", 2.5, "variance", 0.5);
    JsonNode result = Plans.result(Plans.on(rows, "measure", "reported-effect"));
    assertFalse(Plans.warnings(result).contains("limits-off-centre"));
  }
}
