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

/** Families of models weigh alike, and the analysis that pages show is one of them. */
class MultiverseOfFamiliesTest {
  private static ObjectNode plan(int[]... counts) {
    ArrayNode rows = Plans.rows();
    for (int[] one : counts) {
      Plans.row(rows, "events", one[0], "total", one[1]);
    }
    return Plans.on(rows, "task", "multiverse").put("threshold", 0.8);
  }

  private static ObjectNode seven() {
    return plan(
        new int[] {11, 11},
        new int[] {14, 16},
        new int[] {13, 17},
        new int[] {18, 22},
        new int[] {19, 24},
        new int[] {27, 28},
        new int[] {23, 29});
  }

  @Test
  void theAnalysisThatPagesShowIsOneOfThemAndMarked() {
    ObjectNode plan = seven().put("list", true);
    JsonNode multiverse = Plans.result(plan).get("multiverse");
    plan.remove(List.of("task", "threshold", "list"));
    plan.put("model", "bayesian").put("likelihood", "exact");
    JsonNode alone = Plans.result(plan).get("summary");
    assertEquals(alone.get("estimate"), multiverse.at("/pages/estimate"));
    assertEquals(alone.get("lower"), multiverse.at("/pages/lower"));
    List<JsonNode> marked =
        multiverse.get("list").valueStream().filter(one -> one.has("pages")).toList();
    assertEquals(1, marked.size());
    assertEquals(alone.at("/shown/upper"), marked.get(0).at("/shown/upper"));
  }

  @Test
  void ofMeansPagesShowThePosterior() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "n", 12, "mean", 6, "sd", 1.5);
    Plans.row(rows, "n", 16, "mean", 8, "sd", 2);
    Plans.row(rows, "n", 20, "mean", 9, "sd", 3);
    ObjectNode plan = Plans.on(rows, "measure", "mean", "scale", "log", "task", "multiverse");
    JsonNode multiverse = Plans.result(plan).get("multiverse");
    plan.remove("task");
    plan.put("model", "bayesian");
    JsonNode alone = Plans.result(plan).get("summary");
    assertEquals(alone.get("upper"), multiverse.at("/pages/upper"));
    plan.put("task", "multiverse");
    JsonNode own = Plans.result(plan).get("multiverse");
    assertEquals(own.get("own"), own.get("pages"));
  }

  @Test
  void sharesAreTheMeansOfTheFamilies() {
    JsonNode multiverse = Plans.result(seven().put("threshold", 0.86)).get("multiverse");
    JsonNode families = multiverse.get("families");
    assertEquals(3, families.size());
    for (String share : List.of("belowPercent", "abovePercent", "intervalsIncludingPercent")) {
      double mean =
          families
              .valueStream()
              .mapToDouble(one -> one.at("/threshold/" + share).asDouble())
              .average()
              .orElseThrow();
      assertEquals(mean, multiverse.at("/threshold/" + share).asDouble(), 1e-9, share);
    }
    assertTrue(
        families.at("/0/analyses").asInt() > 40 * families.at("/1/analyses").asInt(),
        "one family has far more analyses and weighs no more");
  }

  @Test
  void aPlanThatVariesOtherThingsHasNoAnalysisOfPages() {
    ObjectNode plan = seven();
    plan.putObject("vary").putArray("interval").add("normal");
    assertFalse(Plans.result(plan).get("multiverse").has("pages"));
  }
}
