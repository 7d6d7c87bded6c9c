package gapwise.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.PublishedChecks.BoundPlan;
import gapwise.analysis.PublishedChecks.Check;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.DynamicContainer;
import org.junit.jupiter.api.DynamicNode;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every bound check whose plan has nothing of {@link PendingSettings}, through the plan's door,
 * within the check's own tolerance. Sources stand in source.md beside each dataset.
 */
class PublishedChecksTest {
  /** Counted over the bindings when the settings were declared; it can only grow. */
  private static final int CHECKS_AT_LEAST = 3640;

  /**
   * Checks that contradict docs/plan.md, with the reason. The plan asks for a Hartung-Knapp
   * interval on one study: the check wants no interval, the contract the study's own normal one
   * "whatever the model or interval asked". {@link #aSingleStudyKeepsItsOwnNormalInterval} holds
   * the latter.
   */
  private static final Set<String> CONTRADICTED = Set.of("edge-single-study HK");

  private final Runner runner = Runner.withoutEvidence();

  private static List<BoundPlan> covered() {
    return PublishedChecks.all().stream().filter(p -> PendingSettings.none(p.plan())).toList();
  }

  @TestFactory
  List<DynamicNode> everyCoveredCheckAgreesWithinItsTolerance() {
    List<DynamicNode> plans = new ArrayList<>();
    for (BoundPlan plan : covered()) {
      Outcome outcome = runner.run(plan.plan(), Optional.of(plan.folder()));
      JsonNode json = outcome.json();
      List<DynamicTest> tests = new ArrayList<>();
      for (Check check : agreed(plan)) {
        tests.add(DynamicTest.dynamicTest(check.id(), () -> verify(check, json)));
      }
      plans.add(DynamicContainer.dynamicContainer(plan.dataset() + ": " + plan.name(), tests));
    }
    return plans;
  }

  private static List<Check> agreed(BoundPlan plan) {
    return plan.checks().stream()
        .filter(check -> !CONTRADICTED.contains(plan.dataset() + " " + check.id()))
        .toList();
  }

  @Test
  void aSingleStudyKeepsItsOwnNormalInterval() {
    for (BoundPlan plan : covered()) {
      for (Check check : plan.checks()) {
        if (CONTRADICTED.contains(plan.dataset() + " " + check.id())) {
          JsonNode json = runner.run(plan.plan(), Optional.of(plan.folder())).json();
          // 0.4 -+ 1.959963984540054 * 0.3, the check "lower" and "upper" of the same dataset
          assertEquals(-0.187989195362016, json.at("/summary/lower").asDouble(), 1e-9);
          assertEquals(0.987989195362016, json.at("/summary/upper").asDouble(), 1e-9);
          assertTrue(codes(json).contains("single-study"));
        }
      }
    }
  }

  private static void verify(Check check, JsonNode json) {
    JsonNode binding = check.binding();
    if (binding.has("path")) {
      JsonNode found = PublishedChecks.at(json, binding.get("path").asText());
      assertTrue(found.isNumber(), () -> "no number at " + binding.get("path") + " in " + json);
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
  void noCoveredPlanIsRefused() {
    List<String> refused = new ArrayList<>();
    for (BoundPlan plan : covered()) {
      if (runner.run(plan.plan(), Optional.of(plan.folder())) instanceof Outcome.Wrong wrong
          && !mustBeRefused(plan)) {
        refused.add(plan.dataset() + ": " + plan.name() + ": " + wrong.problems());
      }
    }
    assertEquals(List.of(), refused);
  }

  @Test
  void aPlanOutsideTheDeclaredSettingsIsRefusedWithAPlaceAndNeverPassedOver() {
    List<String> taken = new ArrayList<>();
    List<BoundPlan> outside =
        PublishedChecks.all().stream().filter(p -> !PendingSettings.none(p.plan())).toList();
    for (BoundPlan plan : outside) {
      Outcome outcome = runner.run(plan.plan(), Optional.of(plan.folder()));
      boolean placed =
          outcome instanceof Outcome.Wrong wrong
              && wrong.problems().stream().noneMatch(problem -> problem.where().isEmpty());
      if (!placed) {
        taken.add(plan.dataset() + ": " + plan.name());
      }
    }
    assertEquals(List.of(), taken);
  }

  @Test
  void thePlanInAResultAsksTheSameAgain() {
    for (BoundPlan plan : covered()) {
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
  void theNumberOfChecksThatRunIsReportedAndDoesNotShrink() {
    TreeMap<String, Integer> counts = new TreeMap<>();
    covered().forEach(p -> counts.merge(p.dataset(), agreed(p).size(), Integer::sum));
    int total = counts.values().stream().mapToInt(Integer::intValue).sum();
    System.out.println("published checks run: " + total + " " + counts);
    assertTrue(total >= CHECKS_AT_LEAST, () -> total + " checks, expected " + CHECKS_AT_LEAST);
  }
}
