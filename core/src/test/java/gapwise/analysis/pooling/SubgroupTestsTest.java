package gapwise.analysis.pooling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;

/**
 * Groups of studies held against each other. Values by whole matrices in NumPy 2.4 and SciPy 1.17:
 * core/src/test/reference/subgroup_tests.py.
 */
class SubgroupTestsTest {
  private static final double[] EFFECTS = {
    0.1, 0.9, 0.3, 1.2, 0.6, 1.9, 1.1, 2.4, 1.3, 0.2, 2.8, 1.4
  };
  private static final double[] VARIANCES = {
    0.04, 0.06, 0.03, 0.08, 0.05, 0.04, 0.09, 0.06, 0.05, 0.02, 0.07, 0.04
  };

  private static ObjectNode plan(String groups, String... fields) {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < groups.length(); i++) {
      Plans.row(rows, "effect", EFFECTS[i], "variance", VARIANCES[i]);
      ((ObjectNode) rows.get(i)).put("g", groups.substring(i, i + 1));
    }
    ObjectNode plan =
        Plans.on(rows, fields)
            .put("measure", "reported-effect")
            .put("subgroup", "g")
            .put("betweenStudyVariance", "dersimonian-laird");
    return plan;
  }

  private static double number(JsonNode result, String field) {
    JsonNode found = result.at("/betweenSubgroups/" + field);
    assertTrue(found.isNumber(), () -> field + " in " + result.get("betweenSubgroups"));
    return found.asDouble();
  }

  @Test
  void groupsOfFewStudiesShareOneVarianceAndAreHeldAgainstF() {
    JsonNode result = Plans.result(plan("aaaaabbbbccc", "interval", "hartung-knapp"));
    assertTrue(result.at("/betweenSubgroups").has("tauSquared"));
    assertEquals(2.423965310815399, number(result, "fStatistic"), 1e-10);
    assertEquals(9, number(result, "residualDegreesOfFreedom"));
    assertEquals(0.1438332642541748, number(result, "pValue"), 1e-11);
  }

  @Test
  void neverNarrowerLimitsGiveATestThatIsNeverNarrower() {
    JsonNode result =
        Plans.result(plan("aaaaabbbbccc", "interval", "hartung-knapp-never-narrower"));
    assertEquals(2.339641498043957, number(result, "fStatistic"), 1e-10);
    assertEquals(0.15198694588938041, number(result, "pValue"), 1e-11);
  }

  @Test
  void separateVariancesAreTestedByWelch() {
    JsonNode result =
        Plans.result(
            plan("aaaaabbbbccc", "interval", "hartung-knapp", "subgroupVariance", "separate"));
    assertFalse(result.at("/betweenSubgroups").has("tauSquared"));
    assertEquals(4.4532210695630186, number(result, "fStatistic"), 1e-9);
    assertEquals(4.095878352524654, number(result, "residualDegreesOfFreedom"), 1e-9);
    assertEquals(0.09388636749907886, number(result, "pValue"), 1e-10);
  }

  @Test
  void groupsOfManyStudiesKeepTheirOwnVariance() {
    assertFalse(Plans.result(plan("aaaaaabbbbbb")).at("/betweenSubgroups").has("tauSquared"));
    assertTrue(Plans.result(plan("aaaaaaabbbbb")).at("/betweenSubgroups").has("tauSquared"));
  }

  @Test
  void aTestByChiSquaredOnFewStudiesIsCalledNotHeld() {
    JsonNode result = Plans.result(plan("aaaaabbbbccc", "interval", "normal"));
    assertFalse(result.at("/betweenSubgroups").has("fStatistic"));
    assertTrue(Plans.warnings(result).contains("error-rate-not-held"));
  }

  @Test
  void aTestByFOnVeryFewStudiesSaysThatItFindsTooLittle() {
    JsonNode few = Plans.result(plan("aaaabbbb"));
    assertTrue(few.at("/betweenSubgroups").has("fStatistic"));
    assertTrue(Plans.warnings(few).contains("error-rate-not-held"));
    assertFalse(Plans.warnings(Plans.result(plan("aaaaabbbbccc"))).contains("error-rate-not-held"));
  }

  @Test
  void aNormalTestOfModeratorsOnFewStudiesIsCalledNotHeld() {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 6; i++) {
      Plans.row(rows, "effect", EFFECTS[i], "variance", 0.05, "x", i + 1);
    }
    ObjectNode plan = Plans.on(rows, "measure", "reported-effect", "moderatorTest", "normal");
    plan.putArray("moderators").add("x");
    assertTrue(Plans.warnings(Plans.result(plan)).contains("error-rate-not-held"));
    assertFalse(
        Plans.warnings(Plans.result(plan.put("moderatorTest", "hartung-knapp")))
            .contains("error-rate-not-held"));
  }
}
