package gapwise.analysis.bayesian;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Posteriors of counts through the door of plans: groups, places, priors that leave nothing. */
class CountsByPlanTest {
  private static ObjectNode shares(int[][] series, String... groups) {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < series.length; i++) {
      Plans.row(rows, "events", series[i][0], "total", series[i][1]);
      ((ObjectNode) rows.get(i)).put("group", groups[i]);
    }
    return Plans.on(rows, "measure", "proportion", "model", "bayesian", "likelihood", "exact");
  }

  @Test
  void eachGroupHasThePosteriorThatItHasByItself() {
    ObjectNode plan = shares(new int[][] {{12, 14}, {3, 9}, {23, 27}}, "a", "b", "a");
    plan.put("subgroup", "group").putArray("priorSensitivity").addObject().put("halfNormal", 2);
    JsonNode groups = Plans.result(plan).get("subgroups");
    ObjectNode alone = shares(new int[][] {{12, 14}, {23, 27}}, "a", "a");
    alone.putArray("priorSensitivity").addObject().put("halfNormal", 2);
    JsonNode a = Plans.result(alone);
    assertEquals(a.get("bayesian"), groups.get(0).get("bayesian"));
    assertEquals(a.at("/summary/shown"), groups.get(0).at("/summary/shown"));
    JsonNode b = Plans.result(shares(new int[][] {{3, 9}}, "b"));
    assertEquals(b.at("/bayesian/average"), groups.get(1).at("/bayesian/average"));
    assertEquals(1.0 / 3, groups.get(1).at("/summary/shown/estimate").asDouble(), 1e-12);
  }

  @Test
  void aValueHasItsPlaceInThePredictiveDistribution() {
    ObjectNode plan = shares(new int[][] {{12, 14}, {3, 9}, {23, 27}}, "a", "a", "a");
    JsonNode told = Plans.result(plan);
    double upper = told.at("/summary/shown/predictionUpper").asDouble();
    double middle = told.at("/bayesian/predictive/shown/median").asDouble();
    plan.putArray("places").add(middle).add(upper);
    JsonNode places = Plans.result(plan).get("places");
    assertEquals(0.5, places.at("/0/newStudiesBelow").asDouble(), 1e-6);
    assertEquals(0.975, places.at("/1/newStudiesBelow").asDouble(), 1e-6);
    assertEquals(1, places.at("/0/studiesBelow").asInt());
    assertEquals(3, places.at("/1/studies").asInt());
  }

  private static JsonNode rates(String middle, double scale) {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "events", 3, "personTime", 12);
    Plans.row(rows, "events", 9, "personTime", 20);
    ObjectNode plan =
        Plans.on(rows, "measure", "incidence-rate", "model", "bayesian", "likelihood", "exact");
    plan.putObject("prior").put("mean", middle).putObject("tau").put("halfNormal", scale);
    return Plans.result(plan);
  }

  /**
   * With every rate alike and two studies the mass at a tau grows like exp(tau^2/4), so from a
   * scale of root 2 on a half-normal prior of tau no longer holds it.
   */
  @Test
  void aPriorOfRatesThatLeavesHardlyADistributionIsRefusedWithAWord() {
    assertTrue(rates("uniform", 1).has("summary"));
    JsonNode wide = rates("uniform", 1.5);
    assertFalse(wide.has("summary"));
    assertFalse(wide.has("bayesian"));
    List<String> codes =
        wide.get("warnings").valueStream().map(one -> one.get("code").asText()).toList();
    assertTrue(codes.contains("improper-posterior"), codes::toString);
  }

  /** Under the prior of Jeffreys it grows like exp(tau^2/16) only. */
  @Test
  void thePriorOfJeffreysBearsAWiderPriorOfTheSpread() {
    assertTrue(rates("jeffreys", 1.5).has("bayesian"));
    assertFalse(rates("jeffreys", 2.5).has("bayesian"));
  }
}
