package gapwise.analysis.multiverse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.PlanText;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;

/**
 * Thirteen trials of a vaccine against tuberculosis by their latitude: Colditz and others, JAMA
 * 1994;271:698. Published: van Houwelingen, Arends and Stijnen, Stat Med 2002;21:589, section 5,
 * log odds ratios by maximum likelihood: log odds ratio = 0.371 - 0.0327 latitude (printed values
 * from memory; the same stand among the checks of this data set).
 */
class LatitudeMultiverseTest {
  /** Latitude, then events and patients vaccinated and not. */
  private static final int[][] TRIALS = {
    {44, 4, 123, 11, 139}, {55, 6, 306, 29, 303}, {42, 3, 231, 11, 220},
    {52, 62, 13598, 248, 12867}, {13, 33, 5069, 47, 5808}, {44, 180, 1541, 372, 1451},
    {19, 8, 2545, 10, 629}, {13, 505, 88391, 499, 88391}, {27, 29, 7499, 45, 7277},
    {42, 17, 1716, 65, 1665}, {18, 186, 50634, 141, 27338}, {33, 5, 2498, 3, 2341},
    {33, 27, 16913, 29, 17854}
  };

  private static ArrayNode rows() {
    ArrayNode rows = Plans.rows();
    for (int[] trial : TRIALS) {
      Plans.row(
          rows,
          "latitude",
          trial[0],
          "intervention.events",
          trial[1],
          "intervention.total",
          trial[2],
          "comparator.events",
          trial[3],
          "comparator.total",
          trial[4]);
    }
    return rows;
  }

  private static JsonNode multiverse(String about) {
    ObjectNode plan = Plans.on(rows(), "task", "multiverse");
    plan.put("measure", "odds-ratio").put("list", true);
    plan.putArray("moderators").add("latitude");
    plan.set("about", PlanText.parse(about.replace('\'', '"')));
    plan.set(
        "vary",
        PlanText.parse(
            ("{'model':['random-effects','exact-likelihood'],'leaveOneOut':false,"
                    + "'betweenStudyVariance':['maximum-likelihood','restricted-maximum-likelihood'],"
                    + "'moderatorTest':['normal','t-k-minus-p']}")
                .replace('\'', '"')));
    return Plans.result(plan).get("multiverse");
  }

  @Test
  void thePublishedSlopeAndInterceptAreAmongTheAnalyses() {
    assertEquals(-0.0327, byMaximumLikelihood(multiverse("{'term':'latitude'}")), 5e-5);
    assertEquals(0.371, byMaximumLikelihood(multiverse("{'term':'intercept'}")), 5e-4);
  }

  private static double byMaximumLikelihood(JsonNode multiverse) {
    JsonNode first = multiverse.get("list").get(0);
    JsonNode estimator = multiverse.get("choices").get(2);
    assertEquals("betweenStudyVariance", estimator.get("choice").asText());
    assertEquals(
        "maximum-likelihood",
        estimator.get("levels").get(first.get("levels").get(2).asInt()).get("level").asText());
    return first.get("estimate").asDouble();
  }

  @Test
  void everyAnalysisSaysThatTheVaccineDoesMoreFartherFromTheEquator() {
    JsonNode multiverse = multiverse("{'at':{'latitude':55},'against':{'latitude':13}}");
    assertEquals(100, multiverse.get("threshold").get("intervalsBelowPercent").asDouble());
    assertTrue(multiverse.get("sentence").asText().contains("all lie below 0"));
  }

  /** At the equator's trials the odds ratio is near 1: 0.371 - 13 x 0.0327 = -0.054. */
  @Test
  void aMeanIsToldAsAnOddsRatio() {
    JsonNode multiverse = multiverse("{'at':{'latitude':13}}");
    JsonNode first = multiverse.get("list").get(0);
    assertEquals(-0.054, first.get("estimate").asDouble(), 1e-3);
    assertEquals(
        Math.exp(first.get("estimate").asDouble()),
        first.get("shown").get("estimate").asDouble(),
        1e-12);
    assertEquals(1, multiverse.get("threshold").get("value").asDouble());
  }
}
