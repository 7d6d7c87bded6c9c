package gapwise.analysis.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Networks;
import gapwise.analysis.testing.Plans;
import java.util.List;
import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.Test;

/**
 * What a further study, or a further team, may expect where the spread is not taken as known.
 * Values by SciPy's quadrature on invented studies: core/src/test/reference/unknown_spread.py.
 */
class UnknownSpreadPlanTest {
  private static final double[] EFFECTS = {0.1, 0.5, 0.9, 0.2, 1.2, 0.8, 0.7, 1.1, 0.3, 0.6};
  private static final double[] ERRORS = {0.2, 0.25, 0.3, 0.22, 0.35, 0.28, 0.3, 0.4, 0.21, 0.26};

  private static ObjectNode teams(String teams, String... fields) {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < teams.length(); i++) {
      ObjectNode row =
          rows.addObject().put("study", "S" + i).put("team", teams.substring(i, i + 1));
      row.put("effect", EFFECTS[i]).put("standardError", ERRORS[i]);
    }
    ObjectNode plan = Plans.on(rows, fields).put("measure", "reported-effect");
    return plan.put("model", "three-level").put("cluster", "team");
  }

  private static ArrayNode eightOfThree() {
    ArrayNode rows = Plans.rows();
    Networks.counts(rows, "A", "frame", 6, 40, "nail", 22, 42);
    Networks.counts(rows, "B", "frame", 7, 35, "nail", 5, 34);
    Networks.counts(rows, "C", "frame", 9, 51, "nail", 20, 49);
    Networks.counts(rows, "D", "frame", 5, 30, "nail", 21, 31);
    Networks.counts(rows, "E", "frame", 4, 35, "nail", 9, 33);
    Networks.counts(rows, "F", "frame", 8, 40, "plate", 9, 42);
    Networks.counts(rows, "J", "nail", 12, 50, "plate", 21, 51);
    Networks.counts(rows, "L", "frame", 7, 36, "nail", 13, 38, "plate", 9, 37);
    return rows;
  }

  @Test
  void differencesInAFurtherStudyAreThoseOfTheIntegratedLikelihood() {
    JsonNode result = Plans.result(Networks.arms(eightOfThree(), "odds-ratio"));
    JsonNode nail = Networks.effect(result, "nail", "frame").get("prediction");
    assertEquals(-1.3065565094789389, nail.get("lower").asDouble(), 1e-7);
    assertEquals(3.2927592743131036, nail.get("upper").asDouble(), 1e-7);
    JsonNode plate = Networks.effect(result, "plate", "nail").get("prediction");
    assertEquals(-2.7437559371755085, plate.get("lower").asDouble(), 1e-7);
    assertEquals(2.246552404711231, plate.get("upper").asDouble(), 1e-7);
    JsonNode turned = Networks.effect(result, "nail", "plate").get("prediction");
    assertEquals(-plate.get("upper").asDouble(), turned.get("lower").asDouble(), 1e-9);
  }

  @Test
  void aFurtherTeamIsThatOfTheIntegratedLikelihoodOfTwoVariances() {
    JsonNode summary = Plans.result(teams("xxyyzzwwwx")).get("summary");
    assertEquals(-0.86084403, summary.get("predictionLower").asDouble(), 1e-7);
    assertEquals(2.08495210, summary.get("predictionUpper").asDouble(), 1e-7);
  }

  /** Two treatments, and rows each of a team of its own, are single effects with a flat prior. */
  @Test
  void withoutStructureItIsThePosteriorWithEveryTauAlike() {
    ObjectNode alone = teams("abcdefghij");
    ObjectNode flat = alone.deepCopy().put("model", "bayesian");
    flat.remove("cluster");
    flat.putObject("prior").put("mean", "flat").put("tau", "flat");
    ObjectNode pairs = alone.deepCopy().put("model", "network");
    pairs.remove("cluster");
    for (JsonNode row : pairs.at("/source/rows")) {
      ((ObjectNode) row).put("treatment", "nail").put("against", "frame");
    }
    JsonNode expected = Plans.result(flat).at("/bayesian/predictive");
    JsonNode teams = Plans.result(alone).get("summary");
    JsonNode network = Networks.effect(Plans.result(pairs), "nail", "frame").get("prediction");
    double lower = expected.get("lower").asDouble();
    double upper = expected.get("upper").asDouble();
    assertEquals(lower, teams.get("predictionLower").asDouble(), 1e-8);
    assertEquals(upper, teams.get("predictionUpper").asDouble(), 1e-8);
    assertEquals(lower, network.get("lower").asDouble(), 1e-8);
    assertEquals(upper, network.get("upper").asDouble(), 1e-8);
  }

  /** Higgins, Thompson and Spiegelhalter 2009 with teams for studies: four teams, t on two. */
  @Test
  void theOlderLimitsTakeBothVariancesAsEstimated() {
    JsonNode result = Plans.result(teams("xxyyzzwwwx", "predictionInterval", "t-k-minus-2"));
    JsonNode summary = result.get("summary");
    double error = summary.get("standardError").asDouble();
    double half =
        TDistribution.of(2).inverseCumulativeProbability(0.975)
            * Math.sqrt(error * error + result.at("/heterogeneity/tauSquared").asDouble());
    assertEquals(
        summary.get("estimate").asDouble() + half,
        summary.get("predictionUpper").asDouble(),
        1e-12);
  }

  @Test
  void ofTwoTeamsOrOneNothingIsSaidOfAFurtherOne() {
    for (String teams : List.of("xxxxxyyyyy", "xxxxxxxxxx")) {
      assertTrue(Plans.result(teams(teams)).at("/summary/predictionLower").isMissingNode());
    }
  }

  @Test
  void wordsOfOtherModelsAreRefused() {
    List<String> refused = List.of("predictionInterval interval-not-for-model");
    assertEquals(refused, Plans.problems(teams("xxyyz", "predictionInterval", "normal")));
    assertEquals(
        refused,
        Plans.problems(
            Networks.arms(eightOfThree(), "odds-ratio", "predictionInterval", "t-k-minus-1")));
  }

  /** Where nothing differs at all between teams or arms, the older limits say what they take. */
  @Test
  void theOlderLimitsSayThatTheyTakeASpreadOfZeroAsKnown() {
    String code = "prediction-takes-spread-as-known";
    ObjectNode alike = teams("xxyyzzwwwx", "predictionInterval", "t-k-minus-2");
    alike.at("/source/rows").forEach(row -> ((ObjectNode) row).put("effect", 0.5));
    assertTrue(Plans.warnings(Plans.result(alike)).contains(code));
    alike.put("predictionInterval", "unknown-spread");
    assertFalse(Plans.warnings(Plans.result(alike)).contains(code));
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 5; i++) {
      Networks.counts(rows, "A" + i, "frame", 6, 40, "nail", 8, 42);
    }
    ObjectNode network = Networks.arms(rows, "odds-ratio", "predictionInterval", "t-k-minus-2");
    assertTrue(Plans.warnings(Plans.result(network)).contains(code));
    network.put("predictionInterval", "unknown-spread");
    assertFalse(Plans.warnings(Plans.result(network)).contains(code));
  }

  @Test
  void aCommonEffectHasNoFurtherStudyAndSaysThatTheSettingIsUnused() {
    JsonNode result =
        Plans.result(
            Networks.arms(
                eightOfThree(),
                "odds-ratio",
                "networkEffects",
                "common",
                "predictionInterval",
                "unknown-spread"));
    assertFalse(Networks.effect(result, "nail", "frame").has("prediction"));
    assertTrue(Plans.warnings(result).contains("setting-not-used"));
  }
}
