package gapwise.analysis.multiverse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.PlanText;
import gapwise.analysis.testing.Plans;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A regression told in many ways. What an analysis finds is held against the plan of that analysis
 * alone, whose numbers are held against published ones elsewhere.
 */
class ModeratedMultiverseTest {
  /** Both sides reckon alike but for the order of a few sums. */
  private static final double ROUNDING = 1e-11;

  private static final String EXACT = "exact-likelihood";

  static ArrayNode series(int studies, long seed) {
    Random random = new Random(seed);
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < studies; i++) {
      int total = 8 + random.nextInt(40);
      double length = 2 + random.nextInt(90) / 10.0;
      int events = 0;
      for (int j = 0; j < total; j++) {
        events += random.nextDouble() < 0.98 - 0.03 * length ? 1 : 0;
      }
      Plans.row(rows, "events", i == 1 ? total : events, "total", total, "length", length);
      ((ObjectNode) rows.get(i)).put("team", "team " + i / 2).put("kind", i % 3 == 0 ? "a" : "b");
    }
    return rows;
  }

  private static ObjectNode plan(ArrayNode rows, String more) {
    ObjectNode plan = Plans.on(rows, "task", "multiverse");
    return with(plan, more);
  }

  private static ObjectNode with(ObjectNode plan, String more) {
    plan.setAll((ObjectNode) PlanText.parse("{" + more.replace('\'', '"') + "}"));
    return plan;
  }

  private static JsonNode multiverse(ArrayNode rows, String more) {
    return Plans.result(plan(rows, more + ",'list':true")).get("multiverse");
  }

  private static String level(JsonNode multiverse, JsonNode row, String choice) {
    for (int i = 0; i < multiverse.get("choices").size(); i++) {
      JsonNode one = multiverse.get("choices").get(i);
      int level = row.get("levels").get(i).asInt();
      if (one.get("choice").asText().equals(choice) && level >= 0) {
        return one.get("levels").get(level).get("level").asText();
      }
    }
    return "";
  }

  /** The synthesis of one analysis of a multiverse on the rows that it leaves. */
  private static ObjectNode alone(JsonNode multiverse, JsonNode row, ArrayNode rows) {
    String without = level(multiverse, row, "leaveOneOut").replace("without ", "");
    ArrayNode kept = Plans.rows();
    rows.forEach(
        one -> {
          if (!one.get("study").asText().equals(without)) {
            kept.add(one);
          }
        });
    ObjectNode plan = Plans.on(kept, "measure", "proportion");
    plan.put("model", level(multiverse, row, "model"));
    for (String choice : List.of("scale", "betweenStudyVariance", "moderatorTest")) {
      if (!level(multiverse, row, choice).isEmpty()) {
        plan.put(choice, level(multiverse, row, choice));
      }
    }
    if (level(multiverse, row, "emptyCells").contains("every-if-one")) {
      plan.putObject("continuityCorrection").put("tables", "every-if-one-is-empty");
    }
    return plan;
  }

  private static void assertSame(JsonNode alone, JsonNode row) {
    for (String number : List.of("estimate", "lower", "upper")) {
      double expected = alone.get(number).asDouble();
      assertEquals(
          expected,
          row.get(number).asDouble(),
          ROUNDING * Math.max(1, Math.abs(expected)),
          () -> number + " of " + row);
    }
  }

  @Test
  void everyCoefficientIsThatOfThePlanOfItsAnalysisAlone() {
    ArrayNode rows = series(8, 4);
    JsonNode multiverse =
        multiverse(rows, "'moderators':['length','kind'],'about':{'term':'length'}");
    int exact = 0;
    for (int i = 0; i < multiverse.get("list").size(); i += 5) {
      JsonNode row = multiverse.get("list").get(i);
      ObjectNode plan = alone(multiverse, row, rows);
      JsonNode alone = Plans.result(with(plan, "'moderators':['length','kind']"));
      JsonNode coefficient = alone.get("regression").get("coefficients").get(1);
      assertEquals("length", coefficient.get("term").asText());
      assertSame(coefficient, row);
      assertEquals(coefficient.get("pValue").asDouble(), row.get("pValue").asDouble(), ROUNDING);
      exact += plan.get("model").asText().equals(EXACT) ? 1 : 0;
    }
    assertTrue(exact > 2, "only " + exact + " by the exact likelihood");
  }

  @Test
  void everyMeanIsThePredictionOfThePlanOfItsAnalysisAlone() {
    ArrayNode rows = series(9, 6);
    JsonNode multiverse =
        multiverse(
            rows,
            "'moderators':[{'column':'length','spline':{'knots':[3,6,9]}}],'about':{'at':{'length':8}}");
    for (int i = 0; i < multiverse.get("list").size(); i += 23) {
      JsonNode row = multiverse.get("list").get(i);
      ObjectNode plan = alone(multiverse, row, rows);
      JsonNode alone =
          Plans.result(
              with(
                  plan,
                  "'moderators':[{'column':'length','spline':{'knots':[3,6,9]}}],"
                      + "'predictions':[{'length':8}]"));
      JsonNode mean = alone.get("regression").get("predictions").get(0);
      assertSame(mean, row);
      assertEquals(
          mean.get("shown").get("lower").asDouble(),
          row.get("shown").get("lower").asDouble(),
          ROUNDING);
      assertFalse(row.has("pValue"), "a share of one half is no hypothesis");
    }
  }

  /** Along a straight line the difference of two means is a multiple of the coefficient. */
  @Test
  void aDifferenceAlongALineIsTheCoefficientTimesTheWayBetween() {
    ArrayNode rows = series(9, 7);
    String more = "'moderators':['length'],'cluster':'team'";
    JsonNode slope = multiverse(rows, more + ",'about':{'term':'length'}");
    JsonNode difference =
        multiverse(rows, more + ",'about':{'at':{'length':8},'against':{'length':4}}");
    assertEquals(slope.get("list").size(), difference.get("list").size());
    for (int i = 0; i < slope.get("list").size(); i++) {
      JsonNode one = slope.get("list").get(i);
      JsonNode four = difference.get("list").get(i);
      assertEquals(one.path("code"), four.path("code"));
      if (one.has("estimate")) {
        for (String number : List.of("estimate", "lower", "upper")) {
          double expected = 4 * one.get(number).asDouble();
          // A limit of a profile is found to a share of some 1e-9.
          assertEquals(expected, four.get(number).asDouble(), 1e-7 * Math.abs(expected));
        }
        assertEquals(one.get("pValue").asDouble(), four.get("pValue").asDouble(), 1e-7);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"cr2", "cr1", "cr0"})
  void robustVariancesAreThoseOfThePlanAlone(String robust) {
    ArrayNode rows = series(12, 9);
    String moderators = "'moderators':[{'column':'length','centre':8},'kind'],'cluster':'team'";
    JsonNode multiverse =
        multiverse(
            rows,
            moderators
                + ",'about':{'at':{'length':8,'kind':'b'}},'vary':{'robustVariance':['"
                + robust
                + "'],'betweenStudyVariance':['paule-mandel']}");
    JsonNode row = multiverse.get("list").get(0);
    assertEquals("", level(multiverse, row, "moderatorTest"), "the robust variance is the test");
    ObjectNode plan = Plans.on(rows, "measure", "proportion");
    plan.put("betweenStudyVariance", "paule-mandel").put("robustVariance", robust);
    // With the reference level b at the centre the mean is the intercept.
    with(plan, moderators.replace("'kind'", "{'column':'kind','reference':'b'}"));
    JsonNode intercept = Plans.result(plan).get("robust").get("coefficients").get(0);
    assertEquals("intercept", intercept.get("term").asText());
    for (String number : List.of("estimate", "lower", "upper")) {
      assertEquals(intercept.get(number).asDouble(), row.get(number).asDouble(), 1e-9);
    }
  }

  @Test
  void exactLikelihoodsStandBesideRandomEffectsAndAreWhatPagesTake() {
    JsonNode multiverse =
        multiverse(series(8, 4), "'moderators':['length'],'about':{'term':'length'}");
    assertEquals(2, multiverse.get("families").size());
    assertEquals(EXACT, multiverse.get("families").get(1).get("model").asText());
    assertTrue(multiverse.has("pages") && multiverse.has("own"));
    assertEquals(0, multiverse.get("threshold").get("value").asDouble());
    assertTrue(
        multiverse.get("sentence").asText().contains("the coefficient of length goes from"),
        () -> multiverse.get("sentence").asText());
    assertEquals("length", multiverse.get("about").get("term").asText());
  }

  @Test
  void aCategoryWithoutEventsIsToldAsMissingByTheExactLikelihood() {
    ArrayNode rows = Plans.rows();
    int[] events = {0, 0, 0, 6, 9, 4};
    IntStream.range(0, 6)
        .forEach(
            i -> {
              Plans.row(rows, "events", events[i], "total", 20);
              ((ObjectNode) rows.get(i)).put("kind", i < 3 ? "none" : "some");
            });
    JsonNode multiverse = multiverse(rows, "'moderators':['kind'],'about':{'term':'kind=some'}");
    boolean told = false;
    for (JsonNode one : multiverse.get("notEstimated")) {
      told |= one.get("code").asText().equals("estimate-at-limit");
    }
    assertTrue(told, () -> multiverse.get("notEstimated").toString());
    assertEquals(0, multiverse.get("families").get(1).get("estimated").asInt());
    assertTrue(multiverse.get("families").get(0).get("estimated").asInt() > 0);
  }

  /** What leaves out a level leaves its term out; what is about that level has no answer. */
  @Test
  void aLevelThatNarrowedRowsDoNotHaveIsLeftOut() {
    ArrayNode rows = series(10, 3);
    ((ObjectNode) rows.get(4)).put("kind", "c");
    String vary =
        "'vary':{'model':['random-effects'],'leaveOneOut':false,"
            + "'subsets':[{'column':'kind','without':[['c']]}]}";
    String moderators = "'moderators':['length','kind'],";
    JsonNode length = multiverse(rows, moderators + "'about':{'term':'length'}," + vary);
    assertEquals(2, length.get("estimated").asInt());
    JsonNode level = multiverse(rows, moderators + "'about':{'term':'kind=c'}," + vary);
    assertEquals(1, level.get("estimated").asInt());
    assertEquals("collinear-moderators", level.get("notEstimated").get(0).get("code").asText());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'moderators':['length'] | about missing-field",
        "'moderators':['length'],'about':{'term':'length','at':{'length':3}} | about one-of-two",
        "'moderators':['length'],'about':{'term':'width'} | about.term unknown-term",
        "'moderators':['length'],'about':{'at':{'width':3}} | about.at.width unknown-column",
        "'moderators':['length'],'about':{'at':{'length':3},'against':{'length':3}} |"
            + " about.against no-difference",
        "'about':{'term':'length'} | about field-not-for-task",
        "'moderators':['length'],'about':{'term':'length'},'predictions':[{'length':3}] |"
            + " predictions field-not-for-task",
        "'moderators':['length'],'about':{'term':'length'},'model':'bayesian' |"
            + " model model-not-for-task",
        "'moderators':['length'],'about':{'term':'length'},'vary':{'interval':['normal']} |"
            + " vary.interval field-not-for-task",
        "'moderators':['length'],'about':{'term':'length'},'vary':{'scale':['logit','arcsine']} |"
            + " vary.scale scale-not-for-task",
        "'moderators':['length'],'about':{'term':'length'},'scale':'arcsine',"
            + "'vary':{'model':['exact-likelihood','random-effects']} |"
            + " vary.model scale-not-for-model",
        "'moderators':['length'],'about':{'term':'length'},'vary':{'moderatorTest':['t-k-minus-p']} |"
            + " vary.moderatorTest[0] interval-not-for-model",
        "'moderators':['length'],'about':{'term':'length'},'vary':{'robustVariance':['cr2']} |"
            + " cluster missing-field",
        "'vary':{'moderatorTest':['normal']} | vary.moderatorTest field-not-for-task"
      })
  void whatDoesNotGoTogetherIsRefusedAtItsField(String more, String problem) {
    List<String> found = Plans.problems(plan(series(8, 4), more));
    assertTrue(found.contains(problem), found::toString);
  }

  @Test
  void moreRegressionsByTheExactLikelihoodThanCanBeWaitedForAreRefused() {
    assertEquals(
        List.of("vary too-many-combinations"),
        Plans.problems(plan(series(130, 4), "'moderators':['length'],'about':{'term':'length'}")));
  }
}
