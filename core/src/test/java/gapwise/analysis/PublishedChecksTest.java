package gapwise.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.testing.PublishedChecks;
import gapwise.analysis.testing.PublishedChecks.BoundPlan;
import gapwise.analysis.testing.PublishedChecks.Check;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.DynamicContainer;
import org.junit.jupiter.api.DynamicNode;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every bound check through the plan's door, within the check's own tolerance. Sources stand in
 * source.md beside each dataset.
 */
class PublishedChecksTest {
  /** All checks of the bindings, counted when the data were taken in. */
  private static final int CHECKS = 4955;

  private final Runner runner = Runner.withoutEvidence();

  private static final List<BoundPlan> PLANS = PublishedChecks.all();

  @TestFactory
  List<DynamicNode> everyBoundCheckAgreesWithinItsTolerance() {
    List<DynamicNode> plans = new ArrayList<>();
    for (BoundPlan plan : PLANS) {
      PlanOutcome outcome = runner.run(plan.plan(), Optional.of(plan.folder()));
      JsonNode json = outcome.json();
      List<DynamicTest> tests = new ArrayList<>();
      for (Check check : plan.checks()) {
        tests.add(DynamicTest.dynamicTest(check.id(), () -> verify(check, json)));
      }
      plans.add(DynamicContainer.dynamicContainer(plan.dataset() + ": " + plan.name(), tests));
    }
    return plans;
  }

  private static void verify(Check check, JsonNode json) {
    JsonNode binding = check.binding();
    if (binding.has("path")) {
      JsonNode found = PublishedChecks.at(json, binding.get("path").asText());
      assertTrue(
          found.isNumber(),
          () -> "no number at " + binding.get("path") + "; the result has " + told(json));
      assertEquals(
          check.expected().get("value").asDouble(),
          found.asDouble(),
          check.expected().get("tolerance").asDouble());
      return;
    }
    JsonNode found = PublishedChecks.at(json, binding.get("absent").asText());
    assertTrue(found.isMissingNode(), () -> "found " + found + " at " + binding.get("absent"));
    assertTrue(
        codes(json).contains(binding.get("warning").asText()),
        () -> "expected " + binding.get("warning") + " among " + codes(json));
  }

  /** The parts of a result and its warnings, short enough to read. */
  private static String told(JsonNode json) {
    List<String> parts = new ArrayList<>();
    json.fieldNames().forEachRemaining(parts::add);
    return parts + " and " + codes(json);
  }

  private static List<String> codes(JsonNode json) {
    List<String> codes = new ArrayList<>(json.path("warnings").findValuesAsText("code"));
    codes.addAll(json.path("problems").findValuesAsText("code"));
    return codes;
  }

  /** Whether a check wants a code that only problems have. */
  private static boolean mustBeRefused(BoundPlan plan) {
    return plan.checks().stream()
        .map(check -> check.binding().path("warning").asText())
        .anyMatch(code -> code.equals("model-not-for-measure"));
  }

  @Test
  void noBoundPlanIsRefused() {
    List<String> refused = new ArrayList<>();
    for (BoundPlan plan : PLANS) {
      if (runner.run(plan.plan(), Optional.of(plan.folder())) instanceof PlanOutcome.Wrong wrong
          && !mustBeRefused(plan)) {
        refused.add(plan.dataset() + ": " + plan.name() + ": " + wrong.problems());
      }
    }
    assertEquals(List.of(), refused);
  }

  @Test
  void thePlanInAResultAsksTheSameAgain() {
    for (BoundPlan plan : PLANS) {
      if (mustBeRefused(plan)) {
        continue;
      }
      JsonNode first = runner.run(plan.plan(), Optional.of(plan.folder())).json();
      assertFalse(first.has("problems"), () -> plan.name() + first);
      JsonNode again = runner.run(first.get("plan"), Optional.of(plan.folder())).json();
      assertEquals(first.toString(), again.toString(), plan.name());
    }
  }

  @Test
  void everyExpectedValueIsBoundAndNoneIsLost() {
    TreeMap<String, Integer> counts = new TreeMap<>();
    List<String> withoutValue = new ArrayList<>();
    for (BoundPlan plan : PLANS) {
      counts.merge(plan.dataset(), plan.checks().size(), Integer::sum);
      plan.checks().stream()
          .filter(check -> check.expected() == null)
          .forEach(check -> withoutValue.add(plan.dataset() + " " + check.id()));
    }
    int total = counts.values().stream().mapToInt(Integer::intValue).sum();
    System.out.println("published checks bound: " + total + " " + counts);
    assertEquals(List.of(), withoutValue);
    assertEquals(CHECKS, total);
  }
}
