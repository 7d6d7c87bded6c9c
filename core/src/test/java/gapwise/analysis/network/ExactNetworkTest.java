package gapwise.analysis.network;

import static gapwise.analysis.testing.Networks.counts;
import static gapwise.analysis.testing.Networks.effect;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Networks;
import gapwise.analysis.testing.Plans;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The exact likelihood of a network through the door of plans. */
class ExactNetworkTest {
  private static ObjectNode exact(ArrayNode rows, String... fields) {
    return Networks.arms(rows, "odds-ratio", fields).put("likelihood", "conditional");
  }

  /** Three treatments, with empty cells. Invented. */
  private static ArrayNode small() {
    ArrayNode rows = Plans.rows();
    counts(rows, "A", "frame", 0, 12, "nail", 3, 14);
    counts(rows, "B", "frame", 2, 20, "nail", 5, 19, "plate", 4, 21);
    counts(rows, "C", "nail", 4, 15, "plate", 0, 16);
    counts(rows, "D", "frame", 3, 18, "plate", 6, 17);
    counts(rows, "E", "frame", 1, 22, "nail", 1, 25);
    return rows;
  }

  private static List<String> codes(JsonNode result) {
    return result.get("warnings").findValuesAsText("code");
  }

  @Test
  void oneComparisonIsThePairwiseModelOfTheSameName() {
    int[][] tables = {
      {3, 40, 1, 38}, {0, 25, 4, 26}, {7, 60, 2, 61}, {9, 33, 2, 30}, {5, 22, 0, 21}
    };
    ArrayNode arms = Plans.rows();
    ArrayNode pairs = Plans.rows();
    for (int[] table : tables) {
      counts(arms, "s" + arms.size(), "nail", table[0], table[1], "frame", table[2], table[3]);
      Plans.row(
          pairs,
          "intervention.events",
          table[0],
          "intervention.total",
          table[1],
          "comparator.events",
          table[2],
          "comparator.total",
          table[3]);
    }
    JsonNode pair =
        Plans.result(Plans.on(pairs, "measure", "odds-ratio", "model", "exact-likelihood"));
    JsonNode network = Plans.result(exact(arms, "reference", "frame"));
    JsonNode nail = effect(network, "nail", "frame");
    assertEquals(pair.at("/summary/estimate").asDouble(), nail.get("estimate").asDouble(), 1e-6);
    assertEquals(
        pair.at("/summary/standardError").asDouble(), nail.get("standardError").asDouble(), 1e-6);
    assertEquals(
        pair.at("/heterogeneity/tauSquared").asDouble(),
        network.at("/network/heterogeneity/tauSquared").asDouble(),
        1e-5);
    assertEquals(
        pair.at("/fit/logLikelihood").asDouble(),
        network.at("/fit/logLikelihood").asDouble(),
        1e-7);
    assertFalse(network.at("/fit/restricted").asBoolean());
  }

  @Test
  void nothingIsAddedToEmptyCellsAndNothingIsSaidOfQ() {
    JsonNode result = Plans.result(exact(small(), "better", "lower"));
    assertFalse(codes(result).contains("zero-cells-corrected"));
    assertFalse(result.at("/plan").has("continuityCorrection"));
    assertFalse(result.at("/network").has("inconsistency"));
    assertTrue(result.at("/network/designs").isEmpty());
    assertFalse(result.at("/network/heterogeneity").has("q"));
    assertEquals(3, result.at("/network/ranking").size());
    assertEquals(6, result.at("/network/effects").size());
    assertTrue(codes(result).contains("ranks-hide-size-and-certainty"));
    assertFalse(result.at("/studies/0").has("effect"));
    assertTrue(result.at("/studies/3").has("effect"));
  }

  @Test
  void effectsTurnWithTheirPair() {
    JsonNode result = Plans.result(exact(small()));
    JsonNode one = effect(result, "nail", "frame");
    JsonNode other = effect(result, "frame", "nail");
    assertEquals(one.get("estimate").asDouble(), -other.get("estimate").asDouble(), 0);
    assertEquals(one.get("lower").asDouble(), -other.get("upper").asDouble(), 0);
    assertEquals(Math.exp(one.get("lower").asDouble()), one.at("/shown/lower").asDouble(), 1e-12);
    assertEquals(
        one.at("/prediction/lower").asDouble(), -other.at("/prediction/upper").asDouble(), 1e-4);
    assertTrue(
        one.at("/prediction/lower").asDouble() < one.get("lower").asDouble(),
        "a further study is less sure than the mean");
  }

  @Test
  void aStudyThatSaysNothingIsNamedAndMayTakeItsTreatmentAlong() {
    ArrayNode rows = small();
    counts(rows, "F", "frame", 0, 10, "graft", 0, 11);
    JsonNode result = Plans.result(exact(rows));
    assertTrue(codes(result).contains("study-left-out"));
    assertEquals(
        Plans.result(exact(small())).at("/network/effects"), result.at("/network/effects"));
  }

  @Test
  void aTreatmentWithoutAnEventHasNoHighestPoint() {
    ArrayNode rows = small();
    counts(rows, "F", "frame", 3, 10, "graft", 0, 11);
    JsonNode result = Plans.result(exact(rows));
    assertTrue(codes(result).contains("estimate-at-limit"));
    assertFalse(result.has("network"));
    String message =
        result.get("warnings").findParents("code").stream()
            .filter(one -> one.get("code").asText().equals("estimate-at-limit"))
            .findFirst()
            .orElseThrow()
            .get("message")
            .asText();
    assertTrue(message.contains("compares graft with a further treatment"), message);
  }

  @Test
  void piecesThatNoStudyJoinsAreToldApart() {
    ArrayNode rows = small();
    counts(rows, "F", "flap", 3, 10, "graft", 2, 11);
    counts(rows, "G", "flap", 1, 12, "graft", 4, 13);
    JsonNode result = Plans.result(exact(rows, "better", "lower"));
    assertTrue(codes(result).contains("disconnected-network"));
    assertEquals(8, result.at("/network/effects").size());
    assertFalse(result.at("/network").has("ranking"));
  }

  @Test
  void oneStudyOfEachPairLeavesNoRoomForASpread() {
    ArrayNode rows = Plans.rows();
    counts(rows, "A", "frame", 3, 12, "nail", 5, 14);
    counts(rows, "B", "frame", 2, 20, "plate", 4, 21);
    JsonNode result = Plans.result(exact(rows));
    assertTrue(codes(result).contains("too-few-studies"));
    assertFalse(result.at("/network/heterogeneity").has("tauSquared"));
  }

  @ParameterizedTest
  @CsvSource({
    "likelihood, unconditional, likelihood model-not-for-measure",
    "measure, risk-ratio, likelihood model-not-for-measure",
    "uninformativeStudies, keep, uninformativeStudies part-not-for-model",
    "predictionInterval, t-k-minus-2, predictionInterval interval-not-for-model"
  })
  void whatTheLikelihoodCannotDoIsAProblem(String field, String value, String problem) {
    assertEquals(List.of(problem), Plans.problems(exact(small()).put(field, value)));
  }

  @Test
  void moderatorsAreAProblem() {
    ObjectNode plan = exact(small());
    plan.putArray("moderators").add("year");
    assertEquals(List.of("moderators part-not-for-model"), Plans.problems(plan));
  }

  @ParameterizedTest
  @CsvSource({
    "betweenStudyVariance, dersimonian-laird",
    "tauSquaredInterval, q-profile",
    "quadraturePoints, 9"
  })
  void settingsWithoutBearingAreTold(String field, String value) {
    ObjectNode plan = exact(small());
    if (field.equals("quadraturePoints")) {
      plan.put(field, Integer.parseInt(value));
    } else {
      plan.put(field, value);
    }
    assertTrue(codes(Plans.result(plan)).contains("setting-not-used"));
  }

  @Test
  void anAdditionToEmptyCellsHasNoBearing() {
    ObjectNode plan = exact(small());
    plan.putObject("continuityCorrection").put("amount", 0.25);
    assertTrue(codes(Plans.result(plan)).contains("setting-not-used"));
  }

  @Test
  void otherNamesAndAnotherOrderOfRowsChangeNothing() {
    Map<String, String> names =
        new TreeMap<>(Map.of("frame", "zinc", "nail", "amber", "plate", "moss"));
    ArrayNode turned = Plans.rows();
    ArrayNode rows = small();
    for (int i = rows.size() - 1; i >= 0; i--) {
      ObjectNode row = rows.get(i).deepCopy();
      row.put("treatment", names.get(row.get("treatment").asText()));
      turned.add(row);
    }
    JsonNode before = Plans.result(exact(rows));
    JsonNode after = Plans.result(exact(turned));
    for (String one : names.keySet()) {
      for (String other : names.keySet()) {
        if (!one.equals(other)) {
          JsonNode first = effect(before, one, other);
          JsonNode second = effect(after, names.get(one), names.get(other));
          for (String field : List.of("estimate", "standardError", "lower", "upper")) {
            assertEquals(first.get(field).asDouble(), second.get(field).asDouble(), 1e-5);
          }
        }
      }
    }
    assertEquals(
        before.at("/fit/logLikelihood").asDouble(),
        after.at("/fit/logLikelihood").asDouble(),
        1e-8);
  }
}
