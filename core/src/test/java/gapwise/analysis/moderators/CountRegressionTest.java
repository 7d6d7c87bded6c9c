package gapwise.analysis.moderators;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.Runner;
import gapwise.analysis.testing.Plans;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Counts explained by moderators by their own likelihood. */
class CountRegressionTest {
  private static final Path PUBLISHED = Path.of("src/test/resources/published");

  private static final String ADHERENCE =
      "'measure':'proportion','moderatorTest':'normal',"
          + "'columns':{'study':'study','events':'events','total':'total'}";

  private static final String VACCINE =
      "'measure':'odds-ratio','moderatorTest':'normal','columns':{'study':'study',"
          + "'intervention.events':'treated_events','intervention.total':'treated_total',"
          + "'comparator.events':'control_events','comparator.total':'control_total'}";

  private static final String STROKE =
      "'measure':'incidence-rate','moderatorTest':'normal',"
          + "'columns':{'study':'study','events':'control_events','personTime':'control_time'}";

  private static ObjectNode json(String fields) throws Exception {
    ObjectNode plan =
        (ObjectNode) new ObjectMapper().readTree("{" + fields.replace('\'', '"') + "}");
    return plan.put("model", "exact-likelihood");
  }

  private static JsonNode published(String dataset, String fields, String moderators)
      throws Exception {
    ObjectNode plan = json(fields + ",'moderators':[" + moderators + "]");
    plan.putObject("source").put("table", dataset + ".csv");
    return Runner.withoutEvidence().run(plan, Optional.of(PUBLISHED.resolve(dataset))).json();
  }

  private static JsonNode coefficient(JsonNode result, String term) {
    for (JsonNode one : result.at("/regression/coefficients")) {
      if (one.get("term").asText().equals(term)) {
        return one;
      }
    }
    throw new AssertionError("no " + term + " in " + result);
  }

  private static void near(double expected, JsonNode actual) {
    assertEquals(expected, actual.asDouble(), 1e-5 * Math.max(1, Math.abs(expected)));
  }

  /**
   * Estimates, standard errors, limits by profile likelihood at 95 %: SciPy over dense grids,
   * core/src/test/reference/count_regression.py; all but the limits and those of the spline also by
   * lme4, count_regression.R.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "ONE | intercept | -0.550580618 | 0.358521298 | -1.30027730 | 0.23571181",
        "ONE | care_quality | 0.031643725 | 0.022927319 | -0.01795870 | 0.07956937",
        "TWO | intercept | -0.325353922 | 0.276048705 | -0.89744673 | 0.29226920",
        "TWO | care_quality | 0.047597172 | 0.017693119 | 0.00929103 | 0.08514538",
        "TWO | ethnicity=other | -0.825107918 | 0.266620776 | -1.41857179 | -0.27248619",
        "CURVE | intercept | -0.922836797 | 0.628765263 | -2.28344286 | 0.43723145",
        "CURVE | care_quality | 0.082451214 | 0.074920420 | -0.07740631 | 0.24487168",
        "CURVE | care_quality' | -0.081652599 | 0.115098583 | -0.32994494 | 0.16123866",
      })
  void adherenceToTreatmentHasTheValuesOfAnotherComputation(
      String of, String term, double estimate, double error, double lower, double upper)
      throws Exception {
    JsonNode result =
        published(
            "adherence-proportions",
            ADHERENCE,
            switch (of) {
              case "ONE" -> "'care_quality'";
              case "TWO" -> "'care_quality',{'column':'ethnicity','reference':'caucasian'}";
              default -> "{'column':'care_quality','spline':{'knots':[5,12,24]}}";
            });

    JsonNode told = coefficient(result, term);
    near(estimate, told.get("estimate"));
    near(error, told.get("standardError"));
    near(lower, told.get("lower"));
    near(upper, told.get("upper"));
  }

  /** The same two computations. */
  @Test
  void theSpreadThatIsLeftAndTheTestOfAllAreThoseOfAnotherComputation() throws Exception {
    JsonNode one = published("adherence-proportions", ADHERENCE, "'care_quality'");
    JsonNode two =
        published(
            "adherence-proportions",
            ADHERENCE,
            "'care_quality',{'column':'ethnicity','reference':'caucasian'}");

    near(0.556113052, one.at("/heterogeneity/tau"));
    near(-49.292074298, one.at("/fit/logLikelihood"));
    near(1.72615795, one.at("/regression/moderatorTest/statistic"));
    near(0.376835127, two.at("/heterogeneity/tau"));
    near(-45.632618036, two.at("/fit/logLikelihood"));
    near(9.04507047, two.at("/regression/moderatorTest/statistic"));
    assertEquals(2, two.at("/regression/moderatorTest/degreesOfFreedom/0").asInt());
  }

  /** The same two computations: rates of the untreated by year. */
  @ParameterizedTest
  @CsvSource({
    "intercept, -3.158468277, 0.193537311, -3.61184344, -2.72999412",
    "year, 0.252266543, 0.108994343, -0.01146507, 0.50418986",
  })
  void ratesOfStrokeHaveTheValuesOfAnotherComputation(
      String term, double estimate, double error, double lower, double upper) throws Exception {
    JsonNode result = published("stroke-rates", STROKE, "{'column':'year','centre':1990}");

    JsonNode told = coefficient(result, term);
    near(estimate, told.get("estimate"));
    near(error, told.get("standardError"));
    near(lower, told.get("lower"));
    near(upper, told.get("upper"));
    near(0.275569162, result.at("/heterogeneity/tau"));
    near(3.60095717, result.at("/regression/moderatorTest/statistic"));
    assertTrue(Plans.warnings(result).contains("error-rate-not-held"));
  }

  /** SciPy alone: the non-central hypergeometric distribution given the margins of each table. */
  @Test
  void oddsRatiosOfVaccinationByLatitudeHaveTheValuesOfAnotherComputation() throws Exception {
    JsonNode result = published("bcg-vaccine", VACCINE, "'latitude'");

    near(0.379264186, coefficient(result, "intercept").get("estimate"));
    near(0.128640117, coefficient(result, "intercept").get("standardError"));
    near(-0.05273616, coefficient(result, "intercept").get("lower"));
    near(0.65200317, coefficient(result, "intercept").get("upper"));
    near(-0.033013439, coefficient(result, "latitude").get("estimate"));
    near(-0.041861185, coefficient(result, "latitude").get("lower"));
    near(-0.021605671, coefficient(result, "latitude").get("upper"));
    near(0.055844172, result.at("/heterogeneity/tau"));
    near(-42.062517224, result.at("/fit/logLikelihood"));
    near(12.62454803, result.at("/regression/moderatorTest/statistic"));
  }

  @Test
  void whatHasNoMeaningHereIsAbsent() throws Exception {
    JsonNode result = published("adherence-proportions", ADHERENCE, "'care_quality'");

    assertTrue(result.at("/regression/residualQ").isMissingNode());
    assertTrue(result.at("/regression/rSquaredPercent").isMissingNode());
    assertTrue(result.at("/heterogeneity/q").isMissingNode());
    assertTrue(result.at("/heterogeneity/iSquaredPercent").isMissingNode());
    assertTrue(result.at("/summary").isMissingNode());
    assertFalse(Plans.warnings(result).contains("zero-cells-corrected"));
  }

  static ArrayNode series(int count, long seed) {
    Random random = new Random(seed);
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < count; i++) {
      double length = 3 + random.nextInt(10);
      double share = 1 / (1 + Math.exp(0.2 * length - 2.5 - 0.6 * random.nextGaussian()));
      int total = 4 + random.nextInt(25);
      int events = 0;
      for (int j = 0; j < total; j++) {
        events += random.nextDouble() < share ? 1 : 0;
      }
      Plans.row(
          rows,
          "events",
          events,
          "total",
          total,
          "personTime",
          10.0 * total,
          "length",
          length,
          "inches",
          length / 2.54);
    }
    return rows;
  }

  private static JsonNode run(ArrayNode rows, String fields) throws Exception {
    ObjectNode plan = json(fields);
    plan.putObject("source").set("rows", rows);
    return Plans.result(plan);
  }

  /** A moderator that is centred where one looks leaves there what studies come to without it. */
  @ParameterizedTest
  @CsvSource({"proportion", "incidence-rate"})
  void withoutAnythingToExplainTheFitIsThatOfThePooledCounts(String measure) throws Exception {
    ArrayNode rows = series(14, 3);
    ArrayNode twice = Plans.rows();
    for (int i = 0; i < rows.size(); i++) {
      for (int side : new int[] {-1, 1}) {
        twice.add(rows.get(i).deepCopy());
        ((ObjectNode) twice.get(twice.size() - 1)).put("x", side).put("study", side + "of" + i);
      }
    }
    JsonNode pooled = run(twice, "'measure':'" + measure + "'");
    JsonNode regressed = run(twice, "'measure':'" + measure + "','moderators':['x']");

    JsonNode intercept = coefficient(regressed, "intercept");
    assertEquals(
        pooled.at("/summary/estimate").asDouble(), intercept.get("estimate").asDouble(), 1e-8);
    assertEquals(
        pooled.at("/summary/standardError").asDouble(),
        intercept.get("standardError").asDouble(),
        1e-7);
    assertEquals(
        pooled.at("/heterogeneity/tau").asDouble(),
        regressed.at("/heterogeneity/tau").asDouble(),
        1e-7);
    assertEquals(
        pooled.at("/fit/logLikelihood").asDouble(),
        regressed.at("/fit/logLikelihood").asDouble(),
        1e-8);
    assertEquals(0, coefficient(regressed, "x").get("estimate").asDouble(), 1e-8);
    assertEquals(1, regressed.at("/regression/moderatorTest/pValue").asDouble(), 1e-3);
  }

  @Test
  void theOrderOfRowsChangesNothing() throws Exception {
    ArrayNode rows = series(20, 5);
    List<JsonNode> order = new ArrayList<>();
    rows.forEach(order::add);
    Collections.shuffle(order, new Random(1));
    ArrayNode other = Plans.rows();
    order.forEach(other::add);

    JsonNode one = run(rows, "'measure':'proportion','moderators':['length']");
    JsonNode two = run(other, "'measure':'proportion','moderators':['length']");
    for (String term : List.of("intercept", "length")) {
      for (String field : List.of("estimate", "standardError", "lower", "upper", "pValue")) {
        assertEquals(
            coefficient(one, term).get(field).asDouble(),
            coefficient(two, term).get(field).asDouble(),
            1e-7);
      }
    }
  }

  @Test
  void aModeratorInOtherUnitsHasItsCoefficientInThese() throws Exception {
    ArrayNode rows = series(20, 5);
    JsonNode length =
        coefficient(run(rows, "'measure':'proportion','moderators':['length']"), "length");
    JsonNode inches =
        coefficient(run(rows, "'measure':'proportion','moderators':['inches']"), "inches");

    for (String field : List.of("estimate", "standardError", "lower", "upper")) {
      assertEquals(2.54 * length.get(field).asDouble(), inches.get(field).asDouble(), 1e-7);
    }
    assertEquals(length.get("pValue").asDouble(), inches.get("pValue").asDouble(), 1e-8);
  }

  /** F is the square of t with one coefficient; both refer to k - p. */
  @Test
  void theTestOfOneModeratorIsThatOfItsCoefficient() throws Exception {
    JsonNode result = run(series(12, 9), "'measure':'proportion','moderators':['length']");
    JsonNode length = coefficient(result, "length");

    assertEquals(10, length.get("degreesOfFreedom").asInt());
    assertEquals("[1,10]", result.at("/regression/moderatorTest/degreesOfFreedom").toString());
    assertEquals(
        Math.pow(length.get("statistic").asDouble(), 2),
        result.at("/regression/moderatorTest/statistic").asDouble(),
        1e-7);
    assertEquals(
        length.get("pValue").asDouble(),
        result.at("/regression/moderatorTest/pValue").asDouble(),
        1e-7);
  }

  /** At 0 of every moderator the mean is the intercept, by its own profile. */
  @Test
  void aPredictionWhereModeratorsAreNothingIsTheIntercept() throws Exception {
    JsonNode result =
        run(
            series(16, 2),
            "'measure':'proportion','predictionInterval':'t-k-minus-2',"
                + "'moderators':[{'column':'length','centre':6}],"
                + "'predictions':[{'length':6}],'places':[0.5]");
    JsonNode intercept = coefficient(result, "intercept");
    JsonNode at = result.at("/regression/predictions/0");

    for (String field : List.of("estimate", "standardError", "lower", "upper")) {
      assertEquals(intercept.get(field).asDouble(), at.get(field).asDouble(), 1e-7);
    }
    double shown = at.at("/shown/estimate").asDouble();
    assertEquals(1 / (1 + Math.exp(-at.get("estimate").asDouble())), shown, 1e-12);
    // The mean of a distribution on the logit scale lies nearer to one half than its middle.
    double average = at.at("/shown/average").asDouble();
    assertTrue(Math.abs(average - 0.5) < Math.abs(shown - 0.5));
    assertTrue(at.get("predictionLower").asDouble() < at.get("lower").asDouble());
    double below = at.at("/places/0/newStudiesBelow").asDouble();
    assertEquals(shown > 0.5, below < 0.5);
  }

  @Test
  void anEmptyBandOfLengthsHasNoHighestPointAndSaysSo() throws Exception {
    ArrayNode rows = Plans.rows();
    int[][] counts = {{3, 10, 2}, {5, 12, 3}, {2, 9, 4}, {0, 10, 9}, {0, 14, 11}};
    for (int[] one : counts) {
      Plans.row(rows, "events", one[0], "total", one[1], "length", one[2]);
      ((ObjectNode) rows.get(rows.size() - 1)).put("band", one[2] > 5 ? "long" : "short");
    }
    JsonNode banded = run(rows, "'measure':'proportion','moderators':['band']");
    JsonNode along = run(rows, "'measure':'proportion','moderators':['length']");

    assertTrue(Plans.warnings(banded).contains("estimate-at-limit"), banded.toString());
    assertTrue(banded.at("/regression").isMissingNode());
    assertTrue(banded.at("/fit").isMissingNode());
    // On a line the short ones hold both coefficients.
    assertTrue(along.at("/regression/coefficients/1/estimate").asDouble() < 0);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "'moderators':['length'],'moderatorTest':'hartung-knapp' | moderatorTest"
            + " interval-not-for-model",
        "'moderators':['length'],'moderatorTest':'t-clusters' | moderatorTest"
            + " interval-not-for-model",
        "'moderators':['length'],'permutationTest':{} | permutationTest part-not-for-model",
      })
  void whatDoesNotGoTogetherIsRefused(String fields, String problem) throws Exception {
    ObjectNode plan = json("'measure':'proportion'," + fields);
    plan.putObject("source").set("rows", series(8, 1));

    assertEquals(List.of(problem), Plans.problems(plan));
  }

  @Test
  void eachStudyCanBeLeftOut() throws Exception {
    ArrayNode rows = series(9, 4);
    JsonNode result = run(rows, "'measure':'proportion','moderators':['length'],'influence':true");
    rows.remove(0);
    JsonNode without = run(rows, "'measure':'proportion','moderators':['length']");

    assertEquals(9, result.at("/regression/leaveOneOut").size());
    assertEquals(
        coefficient(without, "length").get("lower").asDouble(),
        result.at("/regression/leaveOneOut/0/coefficients/1/lower").asDouble(),
        1e-9);
  }
}
