package gapwise.analysis.multiverse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.plan.PlanText;
import gapwise.analysis.testing.Plans;
import gapwise.analysis.testing.RandomRows;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;
import org.apache.commons.math3.stat.inference.OneWayAnova;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * One body of evidence analysed in many ways. What an analysis finds is held against the plan of
 * that analysis alone, whose numbers are held against published ones elsewhere.
 */
class MultiverseTest {
  private static final String[] RISK = {"low", "low", "high", "some", "low", ""};

  static ArrayNode invented(int studies, long seed) {
    Random random = new Random(seed);
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < studies; i++) {
      int total = 5 + random.nextInt(56);
      int events = 0;
      for (int j = 0; j < total; j++) {
        events += random.nextDouble() < 0.85 ? 1 : 0;
      }
      Plans.row(rows, "events", i == 1 ? total : events, "total", total, "months", 6 + 3 * (i % 7));
      ((ObjectNode) rows.get(i)).put("risk", RISK[i % RISK.length]);
    }
    return rows;
  }

  static ObjectNode plan(ArrayNode rows, String more) {
    ObjectNode plan = Plans.on(rows, "task", "multiverse");
    plan.setAll((ObjectNode) PlanText.parse("{" + more.replace('\'', '"') + "}"));
    return plan;
  }

  private static final String ALL =
      "'threshold':0.8,'list':true,'vary':{'model':['random-effects','common-effect'],"
          + "'scale':['logit','arcsine','double-arcsine','raw'],'emptyCells':[{},{'continuityCorrection':{'tables':'every'}},"
          + "{'continuityCorrection':{'tables':'every-if-one-is-empty','amount':0.25}}],"
          + "'betweenStudyVariance':['restricted-maximum-likelihood','sidik-jonkman','hedges'],"
          + "'interval':['hartung-knapp','normal','profile-likelihood'],"
          + "'subsets':[{'column':'risk','only':[['low'],['low','some']],'without':[['high']]},"
          + "{'column':'months','atLeast':[9,18]}],'leaveOneOut':true}";

  private static JsonNode multiverse(ObjectNode plan) {
    return Plans.result(plan).get("multiverse");
  }

  private static String level(JsonNode multiverse, JsonNode row, String choice) {
    for (int i = 0; i < multiverse.get("choices").size(); i++) {
      JsonNode one = multiverse.get("choices").get(i);
      if (one.get("choice").asText().equals(choice)) {
        int level = row.get("levels").get(i).asInt();
        return level < 0 ? "" : one.get("levels").get(level).get("level").asText();
      }
    }
    return "";
  }

  @Test
  void everyAnalysisIsToTheLastBitWhatThePlanOfThatAnalysisAloneGives() {
    ArrayNode rows = invented(9, 5);
    JsonNode multiverse = multiverse(plan(rows, ALL));
    int held = 0;
    for (int i = 0; i < multiverse.get("list").size(); i += 7) {
      JsonNode row = multiverse.get("list").get(i);
      ArrayNode some = Plans.rows();
      rows.forEach(
          one -> {
            if (stays(multiverse, row, one)) {
              some.add(one);
            }
          });
      if (!some.isEmpty()) {
        held += held(multiverse, row, some);
      }
    }
    assertTrue(held > 200, "only " + held + " were held against a plan");
  }

  private static boolean stays(JsonNode multiverse, JsonNode row, JsonNode study) {
    String risk = study.get("risk").asText();
    int months = study.get("months").asInt();
    boolean byRisk =
        switch (level(multiverse, row, "rows by risk")) {
          case "only low" -> risk.equals("low");
          case "only low or some" -> risk.equals("low") || risk.equals("some");
          case "without high" -> !risk.isEmpty() && !risk.equals("high");
          default -> true;
        };
    boolean byMonths =
        switch (level(multiverse, row, "rows by months")) {
          case "at least 9" -> months >= 9;
          case "at least 18" -> months >= 18;
          default -> true;
        };
    String omitted = "without " + study.get("study").asText();
    return byRisk && byMonths && !level(multiverse, row, "leaveOneOut").equals(omitted);
  }

  private static int held(JsonNode multiverse, JsonNode row, ArrayNode some) {
    ObjectNode alone =
        Plans.on(
            some,
            "measure",
            "proportion",
            "model",
            level(multiverse, row, "model"),
            "scale",
            level(multiverse, row, "scale"));
    String empty = level(multiverse, row, "emptyCells");
    if (!empty.isEmpty()) {
      alone
          .putObject("continuityCorrection")
          .put("amount", Double.parseDouble(empty.substring(0, empty.indexOf(' '))))
          .put("tables", empty.substring(empty.indexOf("to ") + 3));
    }
    for (String field : List.of("betweenStudyVariance", "interval")) {
      if (!level(multiverse, row, field).isEmpty()) {
        alone.put(field, level(multiverse, row, field));
      }
    }
    JsonNode result = Plans.result(alone);
    if (row.has("code")) {
      String code = row.get("code").asText();
      if (code.equals("zero-width-interval")) {
        // Alone it is told with that warning, among others it is no evidence.
        JsonNode shown = result.at("/summary/shown");
        assertEquals(shown.get("lower").asDouble(), shown.get("upper").asDouble(), 1e-12);
        return 0;
      }
      assertTrue(Plans.warnings(result).contains(code), row::toString);
      assertFalse(result.has("summary"));
      return 0;
    }
    for (String field : List.of("estimate", "lower", "upper")) {
      assertEquals(result.at("/summary/" + field), row.get(field), row::toString);
      // One study alone is told with its exact interval; among others it is read as they are.
      if (row.get("studies").asInt() > 1) {
        assertEquals(
            result.at("/summary/shown/" + field), row.at("/shown/" + field), row::toString);
      }
    }
    return 1;
  }

  @Test
  void theSameBytesComeWithOneTwoAndFiveThreads() throws Exception {
    ObjectNode plan = plan(invented(12, 5), ALL);
    String first = Plans.result(plan).toString();
    for (int threads : new int[] {1, 2, 5}) {
      ForkJoinPool pool = new ForkJoinPool(threads);
      try {
        assertEquals(first, pool.submit(() -> Plans.result(plan).toString()).get());
      } finally {
        pool.shutdown();
      }
    }
  }

  @Test
  void spreadAndSidesAreThoseOfTheList() {
    // Quartiles against Commons Math 3.6.1, Percentile with estimation type R_7.
    JsonNode multiverse = multiverse(ofOneFamily(plan(invented(12, 5), ALL)));
    double[] shown = values(multiverse, "/shown/estimate");
    Percentile percentile = new Percentile().withEstimationType(EstimationType.R_7);
    percentile.setData(shown);
    assertEquals(percentile.evaluate(25), multiverse.at("/shown/lowerQuartile").asDouble(), 1e-14);
    assertEquals(percentile.evaluate(50), multiverse.at("/shown/median").asDouble(), 1e-14);
    assertEquals(percentile.evaluate(75), multiverse.at("/shown/upperQuartile").asDouble(), 1e-14);
    assertEquals(shown.length, multiverse.get("estimated").asInt());
    double[] lower = values(multiverse, "/shown/lower");
    double[] upper = values(multiverse, "/shown/upper");
    long above = DoubleStream.of(lower).filter(value -> value > 0.8).count();
    long below = DoubleStream.of(upper).filter(value -> value < 0.8).count();
    assertEquals(
        100.0 * (shown.length - above - below) / shown.length,
        multiverse.at("/threshold/intervalsIncludingPercent").asDouble(),
        1e-12);
    assertTrue(above > 0 && above < shown.length, "the threshold tells analyses apart");
  }

  private static ObjectNode ofOneFamily(ObjectNode plan) {
    ((ObjectNode) plan.get("vary")).putArray("model").add("random-effects");
    return plan;
  }

  private static double[] values(JsonNode multiverse, String place) {
    return multiverse
        .get("list")
        .valueStream()
        .filter(row -> row.has("estimate"))
        .mapToDouble(row -> row.at(place).asDouble())
        .toArray();
  }

  @Test
  void theShareOfAChoiceIsThatOfAOneWayAnalysisOfVariance() {
    // Against Commons Math 3.6.1, OneWayAnova: F = (between/(g-1)) / (within/(n-g)). Within one
    // family all analyses weigh alike; the choice of the model has one level then.
    JsonNode multiverse = multiverse(ofOneFamily(plan(invented(12, 5), ALL)));
    for (int i = 1; i < multiverse.get("choices").size(); i++) {
      int choice = i;
      JsonNode told = multiverse.get("choices").get(i);
      List<double[]> groups =
          IntStream.range(0, told.get("levels").size())
              .mapToObj(
                  level ->
                      multiverse
                          .get("list")
                          .valueStream()
                          .filter(row -> row.get("levels").get(choice).asInt() == level)
                          .filter(row -> row.has("estimate"))
                          .mapToDouble(row -> row.at("/shown/estimate").asDouble())
                          .toArray())
              .toList();
      double f = new OneWayAnova().anovaFValue(groups);
      double n = groups.stream().mapToInt(group -> group.length).sum();
      double ratio = f * (groups.size() - 1) / (n - groups.size());
      assertEquals(
          100 * ratio / (1 + ratio), told.get("sharePercent").asDouble(), 1e-8, told::toString);
    }
  }

  @Test
  void leavingAStudyOutIsToldByTheShiftOfTheMiddle() {
    JsonNode multiverse = multiverse(plan(invented(12, 5), ALL));
    assertEquals(12, multiverse.get("studies").size());
    JsonNode second = multiverse.get("studies").get(1);
    assertEquals("Study 2", second.get("study").asText());
    assertTrue(
        second.get("shift").asDouble() < 0, "without the series in which all united it is lower");
    String sentence = multiverse.get("sentence").asText();
    assertTrue(sentence.contains("leaving out Study 2"), sentence);
  }

  @Test
  void withoutVaryEveryDefensibleAnalysisIsTriedAndTheFilledPlanGivesTheSameBytes() {
    JsonNode result = Plans.result(plan(invented(6, 3), "'interval':'normal'"));
    JsonNode vary = result.at("/plan/vary");
    assertEquals(3, vary.get("scale").size());
    assertEquals(6, vary.get("betweenStudyVariance").size());
    assertEquals(4, vary.get("interval").size());
    assertTrue(vary.get("leaveOneOut").asBoolean());
    assertTrue(result.at("/multiverse/own/estimate").isNumber());
    assertFalse(result.at("/multiverse").has("threshold"), "no value is special for a share");
    assertEquals(result.toString(), Plans.result(result.get("plan")).toString());
  }

  @Test
  void twoGroupsAreSetAgainstNoDifference() {
    ArrayNode rows = Plans.rows();
    int[][] tables = {{3, 20, 9, 21}, {0, 12, 4, 13}, {5, 30, 6, 28}, {0, 9, 0, 8}};
    for (int[] t : tables) {
      Plans.row(
          rows,
          "intervention.events",
          t[0],
          "intervention.total",
          t[1],
          "comparator.events",
          t[2],
          "comparator.total",
          t[3]);
    }
    for (String measure : List.of("odds-ratio", "risk-ratio", "risk-difference")) {
      JsonNode multiverse = multiverse(plan(rows, "'measure':'" + measure + "'"));
      assertEquals(
          measure.equals("risk-difference") ? 0 : 1,
          multiverse.at("/threshold/value").asDouble(),
          measure);
    }
    JsonNode counts =
        multiverse(
            plan(
                rows,
                "'measure':'odds-ratio','model':'common-effect','pooling':'mantel-haenszel',"
                    + "'vary':{'model':['common-effect'],'leaveOneOut':true},'list':true"));
    assertEquals(5, counts.get("analyses").asInt());
    JsonNode alone =
        Plans.result(
            Plans.on(
                rows,
                "measure",
                "odds-ratio",
                "model",
                "common-effect",
                "pooling",
                "mantel-haenszel"));
    assertEquals(alone.at("/summary/upper"), counts.at("/list/0/upper"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "'task':'synthesis','threshold':1 | threshold field-not-for-task",
        "'model':'bayesian' | model model-not-for-task",
        "'subgroup':'risk' | subgroup field-not-for-task",
        "'influence':true | influence field-not-for-task",
        "'vary':{'scale':['logit','square-root']} | vary.scale[1] scale-not-for-measure",
        "'vary':{'subsets':[{'column':'risk'}]} | vary.subsets[0] missing-field",
        "'vary':{'subsets':[{'column':'risks','only':[['low']]}]} | vary.subsets[0].column"
            + " unknown-column",
        "'vary':{'subsets':[{'column':'risk','atLeast':[3]}]} | row 1, column risk not-a-number",
        "'vary':{'colour':['red']} | vary.colour unknown-field",
        "'measure':'risk-ratio','vary':{'model':['exact-likelihood']} | vary.model[0]"
            + " model-not-for-measure",
      })
  void whatCannotBeVariedIsRefusedAtItsPlace(String fields, String expected) {
    List<String> found = Plans.problems(plan(invented(3, 1), fields));
    assertTrue(found.contains(expected), found.toString());
  }

  @Test
  void absurdlyManyCombinationsAreRefusedBeforeAnyIsRun() {
    assertEquals(
        List.of("vary too-many-combinations"), Plans.problems(plan(invented(3000, 1), "")));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "proportion",
        "odds-ratio",
        "risk-ratio",
        "risk-difference",
        "mean",
        "mean-difference",
        "standardised-mean-difference",
        "ratio-of-means",
        "incidence-rate",
        "incidence-rate-ratio",
        "reported-effect"
      })
  void everyMeasureGivesAnAnswerWhateverTheData(String measure) {
    for (long seed = 0; seed < 12; seed++) {
      Random random = new Random(seed);
      ArrayNode rows = Plans.rows();
      for (int i = 0; i <= random.nextInt(5); i++) {
        RandomRows.fill(random, rows.addObject().put("study", "S" + i), measure);
      }
      ObjectNode plan =
          plan(
              rows,
              "'measure':'"
                  + measure
                  + "','threshold':0.5,'list':true"
                  + (random.nextBoolean() ? ",'model':'common-effect'" : ""));
      PlanOutcome outcome = Runner.withoutEvidence().run(plan, Optional.empty());
      if (outcome instanceof PlanOutcome.Done done) {
        JsonNode multiverse = done.json().get("multiverse");
        int without = 0;
        for (JsonNode one : multiverse.get("notEstimated")) {
          without += one.get("analyses").asInt();
        }
        assertEquals(
            multiverse.get("analyses").asInt(), multiverse.get("estimated").asInt() + without);
        assertEquals(done.json().toString(), Plans.result(done.json().get("plan")).toString());
      }
    }
  }
}
