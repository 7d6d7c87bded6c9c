package gapwise.analysis.network;

import static gapwise.analysis.testing.Networks.contrast;
import static gapwise.analysis.testing.Networks.effect;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.testing.Networks;
import gapwise.analysis.testing.Plans;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Networks at the edge of what can occur: a result or words, never an exception or no number. */
class NetworkExtremesTest {
  private static final List<String> MEASURES =
      List.of(
          "odds-ratio",
          "risk-ratio",
          "risk-difference",
          "mean-difference",
          "standardised-mean-difference",
          "ratio-of-means",
          "incidence-rate-ratio");

  static LongStream seeds() {
    return LongStream.range(0, 12);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void randomArmsGiveAResultOrWordsWhateverTheNumbers(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 25; i++) {
      ArrayNode rows = Plans.rows();
      int studies = 1 + random.nextInt(6);
      int treatments = 2 + random.nextInt(5);
      for (int s = 0; s < studies; s++) {
        for (int t = 0; t < treatments; t++) {
          if (random.nextInt(3) > 0) {
            arm(rows, "S" + s, "t" + t, random);
          }
        }
      }
      if (rows.isEmpty()) {
        arm(rows, "S", "t", random);
      }
      answered(
          Networks.arms(
              rows,
              MEASURES.get(random.nextInt(MEASURES.size())),
              "networkEffects",
              random.nextBoolean() ? "random" : "common"));
    }
  }

  private static void arm(ArrayNode rows, String study, String treatment, Random random) {
    int total = 1 + random.nextInt(random.nextInt(5) == 0 ? 1_000_000 : 20);
    ObjectNode row = rows.addObject();
    row.put("study", study).put("treatment", treatment);
    row.put("events", random.nextInt(3) == 0 ? 0 : random.nextInt(total + 1));
    row.put("total", total).put("n", total).put("personTime", 0.5 + 9 * random.nextDouble());
    row.put("mean", 5 * random.nextGaussian() + 4);
    if (random.nextInt(5) > 0) {
      row.put("sd", random.nextInt(6) == 0 ? 0 : Math.exp(6 * random.nextGaussian()));
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void randomContrastsOverManyPowersOfTenGiveAResultOrWords(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 25; i++) {
      ArrayNode rows = Plans.rows();
      int treatments = 2 + random.nextInt(5);
      for (int s = 0; s <= random.nextInt(12); s++) {
        int one = random.nextInt(treatments);
        int other = (one + 1 + random.nextInt(treatments - 1)) % treatments;
        contrast(
            rows,
            "S" + s,
            "t" + one,
            "t" + other,
            random.nextGaussian() * Math.pow(10, random.nextInt(7) - 3),
            Math.pow(10, random.nextInt(13) - 6));
      }
      answered(
          Networks.contrasts(rows, "networkEffects", random.nextBoolean() ? "random" : "common"));
    }
  }

  private static void answered(ObjectNode plan) {
    PlanOutcome outcome = Runner.withoutEvidence().run(plan, Optional.empty());
    JsonNode json = outcome.json();
    assertFalse(json.has("problems"), () -> plan + " gave " + json);
    assertFalse(json.toString().contains("NaN"), json::toString);
    if (!json.has("network")) {
      assertTrue(json.get("warnings").size() > 0, () -> plan + " gave " + json);
    }
    for (JsonNode one : json.at("/network/effects")) {
      assertTrue(one.get("standardError").asDouble() > 0, () -> plan + " gave " + one);
    }
    JsonNode again = Runner.withoutEvidence().run(json.get("plan"), Optional.empty()).json();
    assertEquals(json.toString(), again.toString(), plan::toString);
  }

  /** A loop whose sides differ by 24 powers of ten: the weak side says nothing, the others all. */
  @Test
  void variancesFarApartCostNoDigits() {
    ArrayNode rows = Plans.rows();
    contrast(rows, "A", "b", "a", 1, 1e-6);
    contrast(rows, "B", "c", "b", 2, 1e6);
    contrast(rows, "C", "d", "c", 3, 1e-6);
    contrast(rows, "D", "d", "a", 7, 1e6);
    JsonNode result = Plans.result(Networks.contrasts(rows, "networkEffects", "common"));
    assertEquals(1, effect(result, "b", "a").get("estimate").asDouble(), 1e-12);
    assertEquals(1e-6, effect(result, "b", "a").get("standardError").asDouble(), 1e-18);
    // c less b by two ways, 2 and 7 - 3 - 1 = 3, of equal variance 1e12 (and 2e-12 more).
    assertEquals(2.5, effect(result, "c", "b").get("estimate").asDouble(), 1e-9);
    assertEquals(Math.sqrt(0.5e12), effect(result, "c", "b").get("standardError").asDouble(), 1e-5);
    // Q is (3 - 2)^2 over the sum of the variances, 2e12.
    assertEquals(0.5e-12, result.at("/network/inconsistency/total/q").asDouble(), 1e-20);
  }

  /**
   * Indirect by hand: 0.9 - 0.5, standard error root(0.3^2 + 0.4^2), however sure the direct is.
   */
  @ParameterizedTest
  @ValueSource(doubles = {1e6, 1, 0.25, 1e-2, 1e-5, 1e-7})
  void indirectEvidenceKeepsItsDigitsBesideDirectEvidenceOfAnyWeight(double error) {
    ArrayNode rows = Plans.rows();
    contrast(rows, "A", "nail", "frame", 0.5, 0.3);
    contrast(rows, "B", "plate", "frame", 0.9, 0.4);
    contrast(rows, "C", "nail", "plate", -0.1, error);
    JsonNode one =
        effect(Plans.result(Networks.contrasts(rows, "networkEffects", "common")), "plate", "nail");
    assertEquals(0.1, one.at("/direct/estimate").asDouble(), 1e-10);
    assertEquals(error, one.at("/direct/standardError").asDouble(), 1e-10 * error);
    assertEquals(0.4, one.at("/indirect/estimate").asDouble(), 1e-10);
    assertEquals(0.5, one.at("/indirect/standardError").asDouble(), 1e-10);
  }

  @Test
  void aStudyWhoseArmsDifferBeyondReckoningIsToldAsSuch() {
    ArrayNode rows = Plans.rows();
    Networks.arm(rows, "A", "a", "n", 10, "mean", 1, "sd", 1e-9);
    Networks.arm(rows, "A", "b", "n", 10, "mean", 1, "sd", 1e-9);
    Networks.arm(rows, "A", "c", "n", 10, "mean", 1, "sd", 1e9);
    JsonNode result = Plans.result(Networks.arms(rows, "mean-difference"));
    assertFalse(result.has("network"));
    assertTrue(Plans.warnings(result).contains("number-out-of-range"));
  }

  @Test
  void tenThousandStudiesTakeTimeInProportion() {
    ArrayNode rows = Plans.rows();
    Random random = new Random(7);
    for (int s = 0; s < 10_000; s++) {
      int arms = 2 + random.nextInt(2);
      int first = random.nextInt(8);
      for (int t = 0; t < arms; t++) {
        int total = 10 + random.nextInt(90);
        Networks.arm(
            rows,
            "S" + s,
            "t" + (first + 3 * t) % 8,
            "events",
            random.nextInt(total),
            "total",
            total);
      }
    }
    JsonNode result = Plans.result(Networks.arms(rows, "odds-ratio"));
    assertEquals(10_000, result.at("/data/studies").asInt());
    assertEquals(56, result.at("/network/effects").size());
    assertTrue(result.at("/network/heterogeneity/tauSquared").asDouble() > 0);
  }
}
