package gapwise.analysis.smallstudy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** When tests for small-study effects are refused, and what must hold whenever they are made. */
class SmallStudyPartTest {
  private static final List<String> TESTS =
      List.of("egger", "egger-random", "begg", "peters", "harbord");

  private static ObjectNode asking(ObjectNode plan, String... tests) {
    ArrayNode asked = plan.putArray("smallStudyEffects");
    for (String test : tests) {
      asked.add(test);
    }
    return plan;
  }

  private static ArrayNode effects(int k, double shift, double factor, int sign) {
    Random random = new Random(7);
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < k; i++) {
      double error = 0.1 + random.nextDouble();
      double effect = 0.4 * error + error * random.nextGaussian();
      Plans.row(rows, "effect", sign * factor * effect + shift, "standardError", factor * error);
    }
    return rows;
  }

  private static JsonNode tested(ArrayNode rows, String... tests) {
    return Plans.result(asking(Plans.on(rows, "measure", "reported-effect"), tests));
  }

  @Test
  void testsOfThreeToNineStudiesAreToldWithAWarningAndOfFewerLeftOut() {
    // Sterne et al., BMJ 2011;343:d4002: at least ten studies.
    JsonNode two = tested(effects(2, 0, 1, 1), "egger", "egger-random", "begg");
    assertFalse(two.has("smallStudyEffects"), two.toString());
    assertTrue(Plans.warnings(two).contains("too-few-studies"));
    assertTrue(two.get("warnings").toString().contains("egger, egger-random, begg left out"));
    for (int k : new int[] {3, 9}) {
      JsonNode few = tested(effects(k, 0, 1, 1), "egger", "egger-random", "begg");
      assertEquals(3, few.get("smallStudyEffects").size());
      assertTrue(Plans.warnings(few).contains("too-few-for-small-study-test"));
    }
    JsonNode ten = tested(effects(10, 0, 1, 1), "egger", "egger-random", "begg");
    assertEquals(3, ten.get("smallStudyEffects").size());
    assertFalse(Plans.warnings(ten).contains("too-few-for-small-study-test"));
  }

  @Test
  void trimAndFillOfFewStudiesIsToldWithACaution() {
    JsonNode result = tested(effects(5, 0, 1, 1), "trim-and-fill");
    assertEquals(1, result.at("/smallStudyEffects/trimAndFill").size());
    assertTrue(Plans.warnings(result).contains("too-few-for-small-study-test"));
    assertEquals("left", result.at("/plan/smallStudyEffects/0/trim-and-fill/side").asText());
    JsonNode two = tested(effects(2, 0, 1, 1), "trim-and-fill");
    assertFalse(two.has("smallStudyEffects"));
    assertTrue(Plans.warnings(two).contains("too-few-studies"));
  }

  private static ArrayNode tables(int k, int withoutEvents) {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < k; i++) {
      Plans.row(
          rows,
          "intervention.events",
          i < withoutEvents ? 0 : 2 + i % 4,
          "intervention.total",
          20 + 7 * i,
          "comparator.events",
          3 + i % 3,
          "comparator.total",
          22 + 6 * i);
    }
    return rows;
  }

  @Test
  void rareEventsRefuseTestsOfEffectsAgainstErrorsButNotThoseOnCounts() {
    String[] all = TESTS.toArray(String[]::new);
    JsonNode rare = Plans.result(asking(Plans.on(tables(12, 6), "measure", "odds-ratio"), all));
    assertTrue(Plans.warnings(rare).contains("events-too-rare-for-small-study-test"));
    assertFalse(rare.at("/smallStudyEffects").has("egger"));
    assertFalse(rare.at("/smallStudyEffects").has("begg"));
    assertTrue(rare.at("/smallStudyEffects").has("peters"));
    assertTrue(rare.at("/smallStudyEffects").has("harbord"));
    JsonNode fewer = Plans.result(asking(Plans.on(tables(12, 5), "measure", "odds-ratio"), all));
    assertEquals(5, fewer.get("smallStudyEffects").size());
    assertTrue(Plans.warnings(fewer).contains("standard-error-follows-effect"));
  }

  @Test
  void proportionsNearAllRefuseTheTestsOnTheLogitButNotOnTheArcsine() {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 14; i++) {
      Plans.row(rows, "events", i % 2 == 0 ? 8 + i : 7 + i, "total", 8 + i);
    }
    JsonNode logit = Plans.result(asking(Plans.on(rows.deepCopy(), "scale", "logit"), "egger"));
    assertTrue(Plans.warnings(logit).contains("events-too-rare-for-small-study-test"));
    JsonNode arcsine = Plans.result(asking(Plans.on(rows, "scale", "arcsine"), "egger"));
    assertTrue(arcsine.at("/smallStudyEffects").has("egger"), arcsine.toString());
  }

  @Test
  void testsOnCountsNeedOddsRatios() {
    ObjectNode plan = Plans.on(tables(12, 0), "measure", "risk-ratio");
    JsonNode result = Plans.result(asking(plan, "peters", "harbord"));
    assertFalse(result.has("smallStudyEffects"));
    assertTrue(Plans.warnings(result).contains("small-study-test-not-for-measure"));
  }

  @Test
  void studiesOfOneSizeCannotBeTested() {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 12; i++) {
      Plans.row(rows, "effect", i % 5, "standardError", 0.3);
    }
    JsonNode result = tested(rows, "egger", "egger-random", "begg");
    assertFalse(result.has("smallStudyEffects"), result.toString());
    assertTrue(Plans.warnings(result).contains("no-variation"));
  }

  @Test
  void noSentenceSpeaksOfSignificance() {
    JsonNode result =
        tested(effects(15, 0, 1, 1), "egger", "egger-random", "begg", "trim-and-fill");
    List<String> sentences = result.get("smallStudyEffects").findValuesAsText("sentence");
    assertEquals(4, sentences.size());
    for (String sentence : sentences) {
      assertFalse(sentence.contains("significan"), sentence);
      assertFalse(sentence.matches(".*\\bp\\b.*"), sentence);
    }
  }

  @Test
  void mirroredEffectsTurnEverySignAndSide() {
    JsonNode plain = tested(effects(15, 0, 1, 1), "egger", "egger-random", "begg");
    JsonNode mirrored = tested(effects(15, 0, 1, -1), "egger", "egger-random", "begg");
    for (String place : List.of("egger/intercept", "eggerRandom/slope", "begg/statistic")) {
      double one = plain.at("/smallStudyEffects/" + place).asDouble();
      assertEquals(-one, mirrored.at("/smallStudyEffects/" + place).asDouble(), 1e-9);
    }
  }

  @Test
  void aConstantAddedToAllEffectsMovesTheSlopeAndNotTheTest() {
    JsonNode plain = tested(effects(15, 0, 1, 1), "egger", "begg", "trim-and-fill");
    JsonNode moved = tested(effects(15, 5, 1, 1), "egger", "begg", "trim-and-fill");
    JsonNode scaled = tested(effects(15, 0, 10, 1), "egger", "begg", "trim-and-fill");
    for (String place : List.of("egger/statistic", "begg/score", "trimAndFill/0/added")) {
      double one = plain.at("/smallStudyEffects/" + place).asDouble();
      assertEquals(one, moved.at("/smallStudyEffects/" + place).asDouble(), 1e-9);
      assertEquals(one, scaled.at("/smallStudyEffects/" + place).asDouble(), 1e-9);
    }
    assertEquals(
        plain.at("/smallStudyEffects/egger/slope").asDouble() + 5,
        moved.at("/smallStudyEffects/egger/slope").asDouble(),
        1e-9);
  }

  static LongStream seeds() {
    return LongStream.range(0, 60);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void anyDataGiveFiniteNumbersOrReasons(long seed) {
    Random random = new Random(seed);
    ArrayNode rows = Plans.rows();
    int k = 1 + random.nextInt(16);
    double size = Math.pow(10, random.nextInt(25) - 12);
    for (int i = 0; i < k; i++) {
      double variance = random.nextInt(8) == 0 ? 0 : Math.pow(10, random.nextInt(25) - 12);
      double effect = random.nextInt(5) * size;
      Plans.row(rows, "effect", effect, "variance", seed % 3 == 0 ? variance : variance + 1e-12);
    }
    ObjectNode plan =
        Plans.on(
            rows,
            "measure",
            "reported-effect",
            "betweenStudyVariance",
            seed % 2 == 0 ? "restricted-maximum-likelihood" : "sidik-jonkman");
    asking(plan, "egger", "egger-random", "begg", "peters", "trim-and-fill");
    plan.withArray("smallStudyEffects")
        .addObject()
        .putObject("trim-and-fill")
        .put("estimator", "R0")
        .put("side", "right")
        .put("model", "common-effect");
    plan.putObject("funnel");
    plan.put("influence", true);
    JsonNode result = Plans.result(plan);
    assertEquals(result.toString(), Plans.result(result.get("plan")).toString());
    assertTrue(Plans.warnings(result).contains("small-study-test-not-for-measure"));
  }

  @Test
  void contoursNeedAValueOfNoEffect() {
    ArrayNode rows = Plans.rows();
    for (int i = 1; i < 5; i++) {
      Plans.row(rows, "events", i, "total", 10);
    }
    ObjectNode plan = Plans.on(rows);
    plan.putObject("funnel").putArray("contours").add(0.95);
    JsonNode result = Plans.result(plan);
    assertFalse(result.get("funnel").has("contours"));
    assertEquals(4, result.at("/funnel/points").size());
    assertTrue(Plans.warnings(result).contains("setting-not-used"));
  }

  /** Three effects of which two are alike lie on a line, whose residuals are rounding alone. */
  @Test
  void effectsOnALineHaveNoErrorOfRoundingForAStandardError() {
    for (double[] other : new double[][] {{14.01, 1.46}, {8.36, 42.4}, {0.3, 0.07}, {-1.7, 3.3}}) {
      ArrayNode rows = Plans.rows();
      Plans.row(rows, "effect", 10.74, "variance", 0.1193);
      Plans.row(rows, "effect", other[0], "variance", other[1]);
      Plans.row(rows, "effect", 10.74, "variance", 0.1193);
      ObjectNode plan = Plans.on(rows, "measure", "reported-effect");
      plan.putArray("smallStudyEffects").add("egger");
      JsonNode result = Plans.result(plan);
      assertFalse(result.at("/smallStudyEffects").has("egger"), result::toString);
      assertTrue(Plans.warnings(result).contains("no-variation"));
    }
  }
}
