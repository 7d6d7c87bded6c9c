package gapwise.analysis.edges;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import gapwise.analysis.Runner;
import gapwise.analysis.testing.Plans;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A value placed among centres by the models that pages show. */
class PlacesOfThePagesModelTest {
  @Test
  void byTheExactLikelihoodIsAnswered() {
    String rows =
        """
        {"study": "A", "events": 13, "total": 15}, {"study": "B", "events": 9, "total": 18},
        {"study": "C", "events": 11, "total": 12}, {"study": "D", "events": 20, "total": 23},
        {"study": "E", "events": 9, "total": 9}, {"study": "F", "events": 12, "total": 15}""";
    String plan =
        "{\"source\": {\"rows\": [" + rows + "]}, \"model\": \"exact-likelihood\", \"places\": ";
    JsonNode result = Runner.withoutEvidence().run(plan + "[0.8]}", Optional.empty()).json();
    JsonNode shown = result.at("/summary/shown");
    assertEquals("t-k-minus-2", result.at("/plan/predictionInterval").asText());
    // 9 of 18 is below 0.8; 12 of 15 is that very value; 9 of 9 has no logit and counts all the
    // same.
    assertEquals(1, result.at("/places/0/studiesBelow").asInt());
    assertEquals(6, result.at("/places/0/studies").asInt());
    String limits = shown.path("predictionLower") + ", " + shown.path("predictionUpper");
    JsonNode places =
        Runner.withoutEvidence().run(plan + "[" + limits + "]}", Optional.empty()).json();
    assertEquals(0.025, places.at("/places/0/newStudiesBelow").asDouble(), 1e-9);
    assertEquals(0.975, places.at("/places/1/newStudiesBelow").asDouble(), 1e-9);
  }

  @Test
  void byThePosteriorIsAnsweredAsItsQuantiles() {
    ArrayNode rows = Plans.rows();
    for (int[] one : new int[][] {{11, 14}, {15, 17}, {10, 10}, {18, 23}, {8, 9}}) {
      Plans.row(rows, "events", one[0], "total", one[1]);
    }
    var plan = Plans.on(rows, "model", "bayesian", "likelihood", "exact");
    JsonNode shown = Plans.result(plan).at("/summary/shown");
    plan.putArray("places")
        .add(shown.get("predictionLower").asDouble())
        .add(shown.get("predictionUpper").asDouble());
    JsonNode places = Plans.result(plan).get("places");
    assertEquals(0.025, places.at("/0/newStudiesBelow").asDouble(), 1e-6);
    assertEquals(0.975, places.at("/1/newStudiesBelow").asDouble(), 1e-6);
    assertEquals(5, places.at("/0/studies").asInt());
  }
}
