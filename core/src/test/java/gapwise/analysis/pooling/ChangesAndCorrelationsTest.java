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

/** Means of changes in the same patients, and correlations. */
class ChangesAndCorrelationsTest {
  private static ObjectNode group(ArrayNode rows, String group, double... numbers) {
    String[] roles = {"n", "before.mean", "before.sd", "after.mean", "after.sd"};
    ObjectNode row = rows.addObject().put("study", "Study " + rows.size());
    for (int i = 0; i < roles.length; i++) {
      row.put(group + roles[i], numbers[i]);
    }
    return row;
  }

  @Test
  void standardDeviationsOfChangesAgreeWithTheExampleOfTheCochraneHandbook() {
    // Section 6.5.2.8 (from memory): 129 patients, 15.2 (6.4) to 16.2 (7.1), change 1.0 (4.5), from
    // which a correlation of 0.78; 135 patients, 15.7 (7.0) to 17.2 (6.9), change 1.5 (4.2), 0.82.
    ArrayNode rows = Plans.rows();
    group(rows, "", 129, 15.2, 6.4, 16.2, 7.1).put("correlation", 0.78);
    group(rows, "", 135, 15.7, 7.0, 17.2, 6.9).put("correlation", 0.82);
    JsonNode studies = Plans.result(Plans.on(rows, "measure", "mean")).get("studies");
    assertEquals(1.0, studies.at("/0/effect").asDouble(), 1e-12);
    assertEquals(1.5, studies.at("/1/effect").asDouble(), 1e-12);
    assertEquals(
        4.5, Math.sqrt(129) * studies.at("/0/standardError").asDouble(), 0.05, "as printed");
    assertEquals(
        4.2, Math.sqrt(135) * studies.at("/1/standardError").asDouble(), 0.05, "as printed");
  }

  @Test
  void thePlanStatesTheCorrelationForRowsThatNameNoneAndSaysSo() {
    ArrayNode rows = Plans.rows();
    ObjectNode row = group(rows, "intervention.", 129, 15.2, 6.4, 16.2, 7.1);
    row.put("intervention.correlation", 0.78);
    row.put("comparator.n", 135).put("comparator.before.mean", 15.7).put("comparator.before.sd", 7);
    row.put("comparator.after.mean", 17.2).put("comparator.after.sd", 6.9);
    JsonNode result =
        Plans.result(Plans.on(rows, "measure", "mean-difference").put("correlation", 0.5));
    // 1.0 - 1.5; variance by hand (6.4^2 + 7.1^2 - 2 x 0.78 x 6.4 x 7.1)/129
    // + (49 + 47.61 - 48.3)/135.
    assertEquals(-0.5, result.at("/studies/0/effect").asDouble(), 1e-12);
    assertEquals(
        (40.96 + 50.41 - 1.56 * 45.44) / 129 + (49 + 47.61 - 48.3) / 135,
        result.at("/studies/0/variance").asDouble(),
        1e-12);
    assertTrue(Plans.warnings(result).contains("correlation-stated-by-plan"));
  }

  @Test
  void aChangeWithoutCorrelationHasNoWeight() {
    ArrayNode rows = Plans.rows();
    group(rows, "", 129, 15.2, 6.4, 16.2, 7.1);
    JsonNode result = Plans.result(Plans.on(rows, "measure", "mean"));
    assertFalse(result.has("summary"));
    assertEquals(1.0, result.at("/studies/0/effect").asDouble(), 1e-12);
    assertTrue(Plans.warnings(result).contains("missing-standard-deviation"));
  }

  @Test
  void aCorrelationBeyondOneIsRefusedAtItsRow() {
    ArrayNode rows = Plans.rows();
    group(rows, "", 129, 15.2, 6.4, 16.2, 7.1).put("correlation", 1.2);
    List<String> problems = Plans.problems(Plans.on(rows, "measure", "mean"));
    assertTrue(problems.get(0).endsWith("out-of-range"), problems::toString);
    ArrayNode pairs = Plans.rows();
    Plans.row(pairs, "correlation", -1.2, "n", 20);
    assertTrue(
        Plans.problems(Plans.on(pairs, "measure", "correlation")).get(0).endsWith("out-of-range"));
  }

  @Test
  void correlationsArePooledAsFishersZ() {
    // Borenstein, Hedges, Higgins and Rothstein, Introduction to Meta-Analysis, 2009, chapter 14,
    // six correlations (from memory): tau squared 0.0819, mean of z 0.5328, as a correlation
    // 0.4875.
    ArrayNode rows = Plans.rows();
    double[][] studies = {{0.5, 40}, {0.6, 90}, {0.4, 25}, {0.2, 400}, {0.7, 60}, {0.45, 50}};
    for (double[] one : studies) {
      Plans.row(rows, "correlation", one[0], "n", one[1]);
    }
    JsonNode result =
        Plans.result(
            Plans.on(
                rows,
                "measure",
                "correlation",
                "betweenStudyVariance",
                "dersimonian-laird",
                "interval",
                "normal"));
    // The same book, chapter 6: r 0.50 is z 0.5493.
    assertEquals(0.5493, result.at("/studies/0/effect").asDouble(), 5e-5);
    assertEquals(1.0 / 37, result.at("/studies/0/variance").asDouble(), 1e-15);
    assertEquals(0.0819, result.at("/heterogeneity/tauSquared").asDouble(), 5e-5);
    assertEquals(0.5328, result.at("/summary/estimate").asDouble(), 5e-5);
    assertEquals(0.4875, result.at("/summary/shown/estimate").asDouble(), 5e-5);
  }

  @Test
  void correlationsWithoutVarianceAreLeftOutAlone() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "correlation", 0.5, "n", 3);
    Plans.row(rows, "correlation", 1, "n", 30);
    Plans.row(rows, "correlation", 0.5, "n", 30);
    JsonNode result = Plans.result(Plans.on(rows, "measure", "correlation"));
    assertEquals(0.5, result.at("/summary/shown/estimate").asDouble(), 1e-14);
    assertTrue(Plans.warnings(result).contains("too-few-patients"));
    assertTrue(Plans.warnings(result).contains("study-left-out"));
  }
}
