package gapwise.analysis.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.testing.Plans;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TrialPlanTest {
  private static PlanOutcome run(String plan) {
    return Runner.withoutEvidence().run(plan, Optional.empty());
  }

  private static List<String> problems(String plan) {
    return Plans.problems(run(plan));
  }

  @Test
  void proportionsNeedNoRowsAndTheDefaultsStandInThePlan() {
    JsonNode result =
        run("{\"task\": \"trial\", \"comparator\": 0.85, \"intervention\": 0.95}").json();
    // base R: power.prop.test(p1 = 0.85, p2 = 0.95, power = 0.80)$n is 140.0951
    assertEquals(141, result.at("/trial/patientsPerArm").asInt());
    assertEquals(282, result.at("/trial/patients").asInt());
    assertEquals(0.8, result.at("/plan/power").asDouble());
    assertEquals("proportion", result.at("/plan/measure").asText());
    assertEquals(result.at("/trial"), run(result.get("plan").toString()).json().at("/trial"));
  }

  @Test
  void timesTakeTheirSpreadFromGroupsThatTellIt() {
    JsonNode result =
        run("{\"task\": \"trial\", \"measure\": \"mean\", \"scale\": \"log\", \"comparator\": 10,"
                + " \"intervention\": 8, \"source\": {\"rows\": ["
                + "{\"study\": \"A\", \"n\": 20, \"mean\": 10, \"sd\": 4},"
                + "{\"study\": \"B\", \"n\": 30, \"mean\": 5, \"sd\": 2},"
                + "{\"study\": \"C\", \"n\": 30, \"mean\": 5}]}}")
            .json();
    // Both groups have sd/mean 0.4, so the spread is root(log 1.16) = 0.3852532; base R:
    // power.t.test(delta = log(1.25), sd = sqrt(log(1.16)), power = 0.8)$n is 47.77
    assertEquals(0.3852532, result.at("/trial/standardDeviation").asDouble(), 5e-8);
    assertEquals(2, result.at("/trial/groupsWithSpread").asInt());
    assertEquals(48, result.at("/trial/patientsPerArm").asInt());
    assertEquals(Math.log(0.8), result.at("/trial/difference").asDouble(), 1e-15);
  }

  @Test
  void noDifferenceAndRatesAtTheirLimitAreRefusedWithTheReason() {
    assertEquals(
        List.of("intervention no-difference"),
        problems("{\"task\": \"trial\", \"comparator\": 0.8, \"intervention\": 0.8}"));
    assertEquals(
        List.of("intervention at-limit"),
        problems("{\"task\": \"trial\", \"comparator\": 0.8, \"intervention\": 1}"));
    assertEquals(
        List.of("comparator at-limit"),
        problems("{\"task\": \"trial\", \"comparator\": 0, \"intervention\": 0.1}"));
  }

  @Test
  void aSpreadIsNamedOnceAndOnlyForMeans() {
    String means = "{\"task\": \"trial\", \"measure\": \"mean\", \"comparator\": 8,";
    assertEquals(
        List.of("standardDeviation spread-once"), problems(means + " \"intervention\": 9}"));
    assertEquals(
        List.of("scale not-for-measure"),
        problems(
            "{\"task\": \"trial\", \"comparator\": 0.8, \"intervention\": 0.9, \"scale\":"
                + " \"log\"}"));
    assertEquals(
        List.of("source no-spread"),
        problems(
            means
                + " \"intervention\": 9, \"source\": {\"rows\": [{\"study\": \"A\", \"n\": 5,"
                + " \"mean\": 8}]}}"));
    assertTrue(
        problems(means + " \"intervention\": 8.0000001, \"standardDeviation\": 5}")
            .contains("intervention too-many-patients"));
  }
}
