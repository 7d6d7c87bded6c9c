package gapwise.analysis.agreement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The task {@code agreement}: what it leaves out and what it refuses. */
class AgreementPlanTest {
  @Test
  void ratersWhoUseOneCategoryHaveNoKappa() {
    ArrayNode same = Plans.rows();
    for (int i = 0; i < 4; i++) {
      same.addObject().put("rater1", "yes").put("rater2", "yes");
    }
    ObjectNode plan = Plans.on(same, "task", "agreement");
    plan.putArray("statistics").add("kappa");
    JsonNode result = Plans.result(plan);
    assertEquals(100, result.at("/agreement/percentAgreement").asDouble());
    assertEquals(0, result.at("/agreement/kappa").size());
    assertTrue(Plans.warnings(result).contains("no-variation"));
  }

  @Test
  void subjectsWithABlankAreLeftOut() {
    ArrayNode lengths = Plans.rows();
    lengths.addObject().put("a", 5.0).put("b", 5.5);
    lengths.addObject().put("a", 7.0).put("b", 6.5);
    lengths.addObject().put("a", 4.0);
    lengths.addObject().put("a", 9.0).put("b", 9.0);
    ObjectNode limits = Plans.on(lengths, "task", "agreement");
    limits.putArray("statistics").add("limits-of-agreement").add("intraclass-correlation");
    limits.putArray("raters").add("a").add("b");
    JsonNode agreed = Plans.result(limits);
    // differences -0.5, 0.5, 0: mean 0, SD 0.5, limits 0 -+ 1.96 * 0.5, worked by hand
    assertEquals(0, agreed.at("/agreement/limitsOfAgreement/mean").asDouble());
    assertEquals(0.98, agreed.at("/agreement/limitsOfAgreement/upper").asDouble(), 1e-14);
    assertTrue(Plans.warnings(agreed).contains("missing-value"));
    assertEquals(6, agreed.at("/agreement/intraclassCorrelation").size());
  }

  @Test
  void anAgreementThatLacksWhatItNeedsIsRefusedAtItsField() {
    ArrayNode rows = Plans.rows();
    rows.addObject().put("rater1", "a").put("rater2", "b");
    ObjectNode limits = Plans.on(rows, "task", "agreement");
    limits.putArray("statistics").add("limits-of-agreement");
    assertEquals(List.of("raters wrong-number-of-raters"), Plans.problems(limits));
    ObjectNode weights = Plans.on(rows, "task", "agreement");
    weights.putArray("statistics").add("kappa");
    weights.putArray("weights").add("linear");
    assertEquals(List.of("categories missing-field"), Plans.problems(weights));
    ObjectNode unknown = Plans.on(rows, "task", "agreement");
    unknown.putArray("statistics").add("kappa");
    unknown.putArray("categories").add("a").add("c");
    assertEquals(List.of("row 1, column rater2 unknown-category"), Plans.problems(unknown));
  }

  @Test
  void agreementWithoutWidthIsSaid() {
    ArrayNode rows = Plans.rows();
    rows.addObject().put("rater1", "a").put("rater2", "a").put("count", 7);
    rows.addObject().put("rater1", "a").put("rater2", "b").put("count", 5);
    ObjectNode kappa = Plans.on(rows, "task", "agreement");
    kappa.putArray("statistics").add("kappa");
    JsonNode result = Plans.result(kappa);
    assertEquals(0, result.at("/agreement/kappa/0/standardError").asDouble());
    assertTrue(Plans.warnings(result).contains("zero-width-interval"));
    ArrayNode equal = Plans.rows();
    for (int i = 0; i < 3; i++) {
      Plans.row(equal, "subject", i, "A", 4 + i, "B", 5 + i);
    }
    ObjectNode limits = Plans.on(equal, "task", "agreement");
    limits.putArray("statistics").add("limits-of-agreement");
    limits.putArray("raters").add("A").add("B");
    assertTrue(Plans.warnings(Plans.result(limits)).contains("zero-width-interval"));
  }

  /**
   * Mean squares 0.0294, 0.3408 and 2.4469 give the two-way random form of Shrout and Fleiss,
   * Psychol Bull 1979;86:420, a denominator of 1.072 and a value of -2.25, which no correlation
   * has.
   */
  @Test
  void aCorrelationThatNoneCanBeIsLeftOutAndSaid() {
    ArrayNode rows = Plans.rows();
    double[][] pairs = {{1.22, 3.85}, {2.45, 3.04}, {3.43, 1.64}};
    for (double[] pair : pairs) {
      Plans.row(rows, "subject", rows.size(), "A", pair[0], "B", pair[1]);
    }
    ObjectNode plan = Plans.on(rows, "task", "agreement");
    plan.putArray("statistics").add("intraclass-correlation");
    plan.putArray("raters").add("A").add("B");
    JsonNode result = Plans.result(plan);
    assertTrue(Plans.warnings(result).contains("variance-below-zero"));
    assertEquals(
        List.of("one-way-single", "one-way-mean", "two-way-fixed-single", "two-way-fixed-mean"),
        result.at("/agreement/intraclassCorrelation").findValuesAsText("form"));
  }
}
