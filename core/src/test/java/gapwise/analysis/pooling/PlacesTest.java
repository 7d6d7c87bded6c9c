package gapwise.analysis.pooling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.Runner;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Shares by {@code scipy.stats.t.cdf} of SciPy 1.17.1 and {@code pt} of base R 4.2.2. */
class PlacesTest {
  private static final String FOUR =
      """
      {"study": "A", "mean": 6, "sd": 1.5, "n": 12, "kind": "few", "x": 4},
      {"study": "B", "mean": 8, "sd": 2, "n": 16, "kind": "few", "x": 5},
      {"study": "C", "mean": 9, "sd": 3, "n": 20, "kind": "few", "x": 7},
      {"study": "D", "mean": 10, "sd": 2.5, "n": 10, "kind": "one", "x": 8}""";

  private static JsonNode run(String rows, String fields) {
    String plan =
        "{\"source\": {\"rows\": ["
            + rows
            + "]}, \"measure\": \"mean\", \"scale\": \"log\","
            + " \"betweenStudyVariance\": \"dersimonian-laird\", "
            + fields
            + "}";
    return Runner.withoutEvidence().run(plan, Optional.empty()).json();
  }

  private static void refused(String fields, String where, String code) {
    JsonNode problem = run(FOUR, fields).at("/problems/0");
    assertEquals(where, problem.path("where").asText(), problem::toString);
    assertEquals(code, problem.path("code").asText());
  }

  @Test
  void theShareOfFurtherStudiesBelowAValueIsThatOfStudentsT() {
    JsonNode places = run(FOUR, "\"places\": [7, 12]").path("places");
    assertEquals(0.293283549729, places.at("/0/newStudiesBelow").asDouble(), 1e-11);
    assertEquals(0.887906253648, places.at("/1/newStudiesBelow").asDouble(), 1e-11);
    assertEquals(1, places.at("/0/studiesBelow").asInt());
    assertEquals(4, places.at("/1/studiesBelow").asInt());
  }

  @Test
  void aStudyWithThatVeryValueIsNotBelowIt() {
    assertEquals(2, run(FOUR, "\"places\": [9]").at("/places/0/studiesBelow").asInt());
  }

  @Test
  void eachGroupPlacesTheValueAmongItsOwnAndUnderThreeStudiesThereIsNoShare() {
    JsonNode groups = run(FOUR, "\"subgroup\": \"kind\", \"places\": [7]").path("subgroups");
    assertEquals(0.39293287876974864, groups.at("/0/places/0/newStudiesBelow").asDouble(), 1e-11);
    assertFalse(groups.at("/1/places/0").has("newStudiesBelow"), groups::toString);
    assertEquals(1, groups.at("/1/places/0/studies").asInt());
    assertFalse(
        run(FOUR.substring(0, FOUR.indexOf("{\"study\": \"C\"") - 2), "\"places\": [7]")
            .at("/places/0")
            .has("newStudiesBelow"));
  }

  @Test
  void theLimitsOfThePredictionIntervalHoldNineteenOfTwenty() {
    JsonNode shown = run(FOUR, "\"places\": [1]").at("/summary/shown");
    String limits = shown.path("predictionLower") + ", " + shown.path("predictionUpper");
    JsonNode places = run(FOUR, "\"places\": [" + limits + "]").path("places");
    assertEquals(0.025, places.at("/0/newStudiesBelow").asDouble(), 1e-12);
    assertEquals(0.975, places.at("/1/newStudiesBelow").asDouble(), 1e-12);
  }

  @Test
  void placesAndPredictionsOfARegressionAgreeAndHaveNoPooledCounts() {
    String asked = "\"moderators\": [\"x\"], \"predictions\": [{\"x\": 6}], \"places\": ";
    JsonNode shown = run(FOUR, asked + "[7]").at("/regression/predictions/0/shown");
    JsonNode places =
        run(FOUR, asked + "[" + shown.path("predictionUpper") + "]")
            .at("/regression/predictions/0/places/0");
    assertEquals(0.975, places.path("newStudiesBelow").asDouble(), 1e-12);
    assertFalse(places.has("studies"));
    assertTrue(run(FOUR, asked + "[7]").path("places").isMissingNode());
  }

  @Test
  void whatHasNoPlaceIsRefusedAtItsField() {
    refused("\"places\": [7, 0]", "places[1]", "out-of-range");
    refused("\"places\": [7], \"model\": \"common-effect\"", "places", "not-with-this-model");
    refused("\"places\": [7], \"moderators\": [\"x\"]", "predictions", "missing-field");
    refused(
        "\"places\": [7], \"subgroup\": \"kind\", \"subgroupVariance\": \"common\"",
        "subgroupVariance",
        "part-not-for-model");
  }
}
