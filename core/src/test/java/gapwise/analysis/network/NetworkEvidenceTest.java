package gapwise.analysis.network;

import static gapwise.analysis.testing.Networks.contrast;
import static gapwise.analysis.testing.Networks.effect;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Networks;
import gapwise.analysis.testing.Plans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a network's results rest on. Values without another source by whole matrices in NumPy 2.4:
 * core/src/test/reference/network_sides.py.
 */
class NetworkEvidenceTest {
  private static JsonNode eight() {
    return Plans.result(
        Networks.arms(Networks.eightStudies(), "odds-ratio", "networkEffects", "common"));
  }

  @ParameterizedTest
  @CsvSource({
    "nail, plate, 0.33944299081282914, 0.27121463103480603, 0.5992752619430189,"
        + " 0.6144174070892126, 0.6691849417651677, 0.6978075735120963",
    "frame, nail, -1.0744699223213894, 0.35401757920997357, 0.7820506346432641,"
        + " 0.47488652038608903, 0.5840886636658474, 0.001480438173550809"
  })
  void aPairThatStudiesOfThreeArmsHoldIsPartedOnBothSidesAlike(
      String one,
      String other,
      double direct,
      double directError,
      double indirect,
      double indirectError,
      double differenceError,
      double pValue) {
    JsonNode found = effect(eight(), one, other);
    assertEquals(direct, found.at("/direct/estimate").asDouble(), 1e-10);
    assertEquals(directError, found.at("/direct/standardError").asDouble(), 1e-10);
    assertEquals(indirect, found.at("/indirect/estimate").asDouble(), 1e-10);
    assertEquals(indirectError, found.at("/indirect/standardError").asDouble(), 1e-10);
    assertEquals(direct - indirect, found.at("/disagreement/difference").asDouble(), 1e-10);
    assertEquals(differenceError, found.at("/disagreement/standardError").asDouble(), 1e-10);
    assertEquals(pValue, found.at("/disagreement/pValue").asDouble(), 1e-10);
    assertEquals("side-splitting", found.at("/disagreement/method").asText());
    JsonNode turned = effect(eight(), other, one);
    assertEquals(-direct, turned.at("/direct/estimate").asDouble(), 1e-10);
    assertEquals(-indirect, turned.at("/indirect/estimate").asDouble(), 1e-10);
  }

  @Test
  void contributionsFollowTheFlowThroughStudiesOfTwoAndThreeArms() {
    JsonNode contributions = effect(eight(), "graft", "plate").get("contributions");
    double sum = 0;
    for (JsonNode one : contributions) {
      sum += one.get("percent").asDouble();
      double expected =
          switch (one.get("treatment").asText() + " " + one.get("against").asText()) {
            case "graft plate" -> 24.7644469296;
            case "frame graft" -> 16.3974055911;
            case "frame plate" -> 10.8573580897;
            case "graft nail" -> 18.4503471934;
            case "nail plate" -> 23.9903946948;
            case "frame nail" -> 5.5400475014;
            default -> Double.NaN;
          };
      assertEquals(expected, one.get("percent").asDouble(), 1e-7, one.toString());
    }
    assertEquals(6, contributions.size());
    assertEquals(100, sum, 1e-9);
  }

  @Test
  void inATriangleOfEqualStudiesTheTwoWaysShareByHand() {
    // The direct way has half the variance of the other: two thirds of the flow. The third that
    // flows through b is shared by its two comparisons.
    ArrayNode rows = Plans.rows();
    contrast(rows, "1", "a", "b", 0.1, 0.2);
    contrast(rows, "2", "b", "c", 0.2, 0.2);
    contrast(rows, "3", "a", "c", 0.3, 0.2);
    JsonNode found =
        effect(Plans.result(Networks.contrasts(rows, "networkEffects", "common")), "c", "a");
    assertEquals(100 / 6.0, found.at("/contributions/0/percent").asDouble(), 1e-9);
    assertEquals(200 / 3.0, found.at("/contributions/1/percent").asDouble(), 1e-9);
    assertEquals(100 / 6.0, found.at("/contributions/2/percent").asDouble(), 1e-9);
    assertFalse(found.has("prediction"));
  }

  @Test
  void ofTwoTreatmentsTheLimitsForAFurtherStudyAreTheUsualOnes() {
    ArrayNode rows = Plans.rows();
    ArrayNode pairs = Plans.rows();
    double[] effects = {0.1, 0.7, 0.4, 1.3, 0.2};
    for (int i = 0; i < 5; i++) {
      contrast(rows, "s" + i, "b", "a", effects[i], 0.2);
      Plans.row(pairs, "effect", effects[i], "standardError", 0.2);
    }
    ObjectNode plan = Networks.contrasts(rows, "predictionInterval", "t-k-minus-2");
    JsonNode network = effect(Plans.result(plan), "b", "a");
    JsonNode pair =
        Plans.result(Plans.on(pairs, "measure", "reported-effect", "interval", "normal"));
    assertEquals(
        pair.at("/summary/predictionLower").asDouble(),
        network.at("/prediction/lower").asDouble(),
        1e-7);
    assertEquals(
        pair.at("/summary/predictionUpper").asDouble(),
        network.at("/prediction/upper").asDouble(),
        1e-7);
  }
}
