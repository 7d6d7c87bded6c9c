package gapwise.analysis.testing;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Short ways for tests to ask a plan and read its result. */
public final class Plans {
  private Plans() {}

  /** A plan on rows, with further fields given as name and value in turn. */
  public static ObjectNode on(ArrayNode rows, String... fields) {
    ObjectNode plan = JsonNodeFactory.instance.objectNode();
    plan.putObject("source").set("rows", rows);
    for (int i = 0; i < fields.length; i += 2) {
      plan.put(fields[i], fields[i + 1]);
    }
    return plan;
  }

  public static ArrayNode rows() {
    return JsonNodeFactory.instance.arrayNode();
  }

  /** Adds a row of numbers, given as role and value in turn. */
  public static void row(ArrayNode rows, Object... cells) {
    ObjectNode row = rows.addObject();
    row.put("study", "Study " + rows.size());
    for (int i = 0; i < cells.length; i += 2) {
      row.put((String) cells[i], ((Number) cells[i + 1]).doubleValue());
    }
  }

  /** The result of pooling effects that rows report, with more fields and their values by turns. */
  public static JsonNode ofEffects(ArrayNode rows, String... more) {
    return result(on(rows, more).put("measure", "reported-effect"));
  }

  /** The result, which must be one and hold only finite numbers. */
  public static JsonNode result(JsonNode plan) {
    PlanOutcome outcome = Runner.withoutEvidence().run(plan, Optional.empty());
    JsonNode json = outcome.json();
    if (outcome instanceof PlanOutcome.Wrong) {
      fail("refused: " + json);
    }
    assertFinite(json);
    return json;
  }

  /** The problems of a plan that must be refused. */
  public static List<String> problems(JsonNode plan) {
    return problems(Runner.withoutEvidence().run(plan, Optional.empty()));
  }

  /** The problems of an outcome that must be one, as "where code". */
  public static List<String> problems(PlanOutcome outcome) {
    assertTrue(outcome instanceof PlanOutcome.Wrong, () -> "not refused: " + outcome.json());
    List<String> found = new ArrayList<>();
    outcome
        .json()
        .get("problems")
        .forEach(p -> found.add(p.get("where").asText() + " " + p.get("code").asText()));
    return found;
  }

  public static List<String> warnings(JsonNode result) {
    return result.get("warnings").findValuesAsText("code");
  }

  private static void assertFinite(JsonNode node) {
    if (node.isDouble()) {
      assertTrue(Double.isFinite(node.doubleValue()));
    }
    node.forEach(Plans::assertFinite);
  }
}
