package gapwise.analysis.moderators;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Plans;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Regressions through the plan's door on twelve invented studies. Expected values are from R 4.2.2:
 * {@code lm(y ~ ..., weights = 1/v)} with standard errors divided by {@code sigma} where no scale
 * is estimated, {@code splines::ns} (another basis of the same curves), {@code quantile} of type 7.
 */
class RegressionPlansTest {
  private static final double[] X = {2, 3, 4, 4.5, 6, 7, 8, 8, 9.5, 11, 13, 15};
  private static final String G = "nynnynyynyny";
  private static final String H = "ababababab" + "ba";
  private static final double[] Y = {
    0.10, 0.35, 0.20, 0.42, 0.80, 0.55, 0.95, 0.70, 0.50, 1.30, 0.65, 1.10
  };
  private static final double[] V = {
    0.04, 0.09, 0.05, 0.02, 0.08, 0.03, 0.06, 0.10, 0.04, 0.07, 0.05, 0.12
  };

  /** R prints fifteen digits; nearly collinear columns leave it some eleven. */
  private static final double R = 1e-11;

  static ArrayNode studies(double variances) {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < X.length; i++) {
      Plans.row(rows, "effect", Y[i], "variance", variances * V[i], "x", X[i]);
      ObjectNode row = (ObjectNode) rows.get(i);
      row.put("g", G.charAt(i) == 'y' ? "yes" : "no").put("h", String.valueOf(H.charAt(i)));
    }
    return rows;
  }

  private static ObjectNode plan(ArrayNode rows, String json) {
    try {
      ObjectNode plan = (ObjectNode) new ObjectMapper().readTree(json.replace('\'', '"'));
      plan.put("measure", "reported-effect").putObject("source").set("rows", rows);
      return plan;
    } catch (java.io.IOException e) {
      throw new IllegalArgumentException(json, e);
    }
  }

  private static JsonNode result(String json) {
    return Plans.result(plan(studies(1), json));
  }

  private static void coefficient(
      JsonNode result, int at, String term, double estimate, double error) {
    JsonNode found = result.at("/regression/coefficients/" + at);
    assertEquals(term, found.get("term").asText());
    assertEquals(estimate, found.get("estimate").asDouble(), R);
    assertEquals(error, found.get("standardError").asDouble(), R);
  }

  @Test
  void aNumberTimesACategoryTakesTheCentredNumber() {
    JsonNode result =
        result(
            "{'model':'common-effect','moderators':[{'column':'x','centre':5},'g',"
                + "{'product':['x','g']}]}");
    coefficient(result, 0, "intercept", 0.3551566641573412, 0.0813062259560746);
    coefficient(result, 1, "x", 0.0445909272063614, 0.0229417910796795);
    coefficient(result, 2, "g=yes", 0.2913802066930046, 0.1813251945198638);
    coefficient(result, 3, "x*g=yes", 0.0278202431215966, 0.0411179413440346);
    assertEquals(3.54468182426847, result.at("/regression/residualQ/q").asDouble(), R);
    assertEquals(8, result.at("/regression/residualQ/degreesOfFreedom").asInt());
    assertFalse(result.has("summary"));
  }

  @Test
  void aCategoryTimesACategoryHasATermForEachPairOfLevels() {
    JsonNode result =
        result("{'model':'common-effect','moderators':['g','h',{'product':['g','h']}]}");
    coefficient(result, 0, "intercept", 0.271428571428572, 0.119522860933439);
    coefficient(result, 1, "g=yes", 0.661904761904762, 0.202366946294055);
    coefficient(result, 2, "h=b", 0.235023041474654, 0.154800302456271);
    coefficient(result, 3, "g=yes*h=b", -0.336069379292293, 0.280857475213769);
  }

  @Test
  void aNumberTimesANumberAndItsSquareAreProductsOfTheColumns() {
    ArrayNode rows = studies(1);
    for (int i = 0; i < X.length; i++) {
      ((ObjectNode) rows.get(i)).put("z", X[i] * X[i]);
    }
    JsonNode square =
        Plans.result(
            plan(rows, "{'model':'common-effect','moderators':['x',{'product':['x','x']}]}"));
    JsonNode column = Plans.result(plan(rows, "{'model':'common-effect','moderators':['x','z']}"));
    assertEquals("x*x", square.at("/regression/coefficients/2/term").asText());
    for (int j = 0; j < 3; j++) {
      String place = "/regression/coefficients/" + j + "/estimate";
      assertEquals(column.at(place).asDouble(), square.at(place).asDouble(), 1e-15);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "'3,7,13', 1.33266050034508, -0.000313044602716583, 0.454847849905281321, 0.798084843568451552,"
        + " 0.999273463280363705, 0.1898609302152761, 0.0758060930698189, 0.0924621883294010,"
        + " 0.4406269708284919",
    "'2.5,5,8,14', 1.34419748203394, -0.0376180165727761, 0.4704057037619909, 0.7869718010041420,"
        + " 1.0336795901958387, 0.269869102721522, 0.112522033537548, 0.121465406374427,"
        + " 0.576764348728571"
  })
  void aSplinePredictsWhatAnotherBasisOfTheSameCurvesPredicts(
      String knots,
      double bent,
      double m1,
      double m5,
      double m10,
      double m20,
      double s1,
      double s5,
      double s10,
      double s20) {
    JsonNode result =
        result(
            "{'model':'common-effect','moderators':[{'column':'x','spline':{'knots':["
                + knots
                + "]}}],'predictions':[{'x':1},{'x':5},{'x':10},{'x':20}]}");
    double[] means = {m1, m5, m10, m20};
    double[] errors = {s1, s5, s10, s20};
    for (int i = 0; i < 4; i++) {
      JsonNode at = result.at("/regression/predictions/" + i);
      assertEquals(means[i], at.get("estimate").asDouble(), R);
      assertEquals(errors[i], at.get("standardError").asDouble(), R);
      assertEquals(i == 0 || i == 3, at.get("outsideData").asBoolean());
      assertFalse(at.has("predictionLower"), "a common effect has no prediction interval");
    }
    assertEquals("x'", result.at("/regression/coefficients/2/term").asText());
    // The test that the curve is straight is the fall of the residual sum of squares.
    JsonNode test = result.at("/regression/nonlinearity/0/test");
    assertEquals(bent, test.get("statistic").asDouble(), 1e-10);
    assertEquals(knots.split(",").length - 2, test.at("/degreesOfFreedom/0").asInt());
  }

  @ParameterizedTest
  @CsvSource({
    "3, '3.1,7.5,12.8'",
    "4, '2.55,5.775,8.225,13.9'",
    "5, '2.55,4.5375,7.5,9.4625,13.9'"
  })
  void usualKnotsLieAtHarrellsQuantiles(int count, String expected) {
    JsonNode knots =
        result("{'moderators':[{'column':'x','spline':{'count':" + count + "}}]}")
            .at("/regression/nonlinearity/0/knots");
    String[] each = expected.split(",");
    assertEquals(each.length, knots.size());
    for (int i = 0; i < each.length; i++) {
      assertEquals(Double.parseDouble(each[i]), knots.get(i).asDouble(), 1e-12);
    }
  }

  @Test
  void aPredictionHasTheIntervalsOfTheTestAndOfAFurtherStudy() {
    JsonNode result =
        Plans.result(
            plan(
                studies(0.125),
                "{'betweenStudyVariance':'dersimonian-laird','moderators':['x'],"
                    + "'predictions':[{'x':10},{'column':'x','from':0,'to':20,'points':3}]}"));
    // R: tau squared by (y'Py - 10)/tr P, then lm(y ~ x, weights = 1/(v + tau squared)).
    assertEquals(0.0459042939720884, result.at("/heterogeneity/tauSquared").asDouble(), R);
    JsonNode at = result.at("/regression/predictions/0");
    assertEquals(0.793684154664484, at.get("estimate").asDouble(), R);
    assertEquals(0.0852840971856421, at.get("standardError").asDouble(), R);
    assertEquals(0.603659344268582, at.get("lower").asDouble(), R);
    assertEquals(0.983708965060387, at.get("upper").asDouble(), R);
    assertEquals(0.276267038157714, at.get("predictionLower").asDouble(), R);
    assertEquals(1.311101271171256, at.get("predictionUpper").asDouble(), R);
    JsonNode points = result.at("/regression/curves/0/points");
    assertEquals(3, points.size());
    assertEquals(at.get("upper"), points.at("/1/upper"));
    assertTrue(points.at("/0/outsideData").asBoolean());
  }

  @Test
  void whatIsNotGivenIsHeldAtTheMeanAndTheReferenceLevel() {
    JsonNode at =
        result("{'moderators':['x','g'],'predictions':[{'g':'yes'},{}]}").at("/regression");
    // Mean of the twelve values of x: 91 / 12.
    assertEquals(91.0 / 12, at.at("/predictions/0/at/x").asDouble(), 1e-14);
    assertEquals("no", at.at("/predictions/1/at/g").asText());
    double step = at.at("/coefficients/2/estimate").asDouble();
    assertEquals(
        step,
        at.at("/predictions/0/estimate").asDouble() - at.at("/predictions/1/estimate").asDouble(),
        1e-14);
  }

  @Test
  void shownPredictionsAreCarriedBackToWhatPeopleRead() {
    ArrayNode rows = Plans.rows();
    int[][] united = {{9, 10}, {17, 20}, {12, 18}, {20, 30}, {6, 12}};
    for (int i = 0; i < united.length; i++) {
      Plans.row(rows, "events", united[i][0], "total", united[i][1], "length", 2 + 2 * i);
    }
    ObjectNode plan = plan(rows, "{'moderators':['length'],'predictions':[{'length':40}]}");
    plan.put("measure", "proportion");
    JsonNode at = Plans.result(plan).at("/regression/predictions/0");
    double logit = at.get("estimate").asDouble();
    assertEquals(1 / (1 + Math.exp(-logit)), at.at("/shown/estimate").asDouble(), 1e-15);
    assertTrue(at.at("/shown/predictionLower").asDouble() >= 0);
    assertTrue(at.get("outsideData").asBoolean());
  }

  @Test
  void allArrangementsOfSixStudiesAreCounted() {
    ArrayNode rows = studies(1);
    ArrayNode six = Plans.rows();
    List.of(0, 2, 5, 8, 10, 11).forEach(i -> six.add(rows.get(i)));
    JsonNode test =
        Plans.result(plan(six, "{'model':'common-effect','moderators':['x'],'permutationTest':{}}"))
            .at("/regression/permutationTest");
    // R: 5 of the 720 orders of x give lm(y ~ x, weights = 1/v) so large a z.
    assertTrue(test.get("exact").asBoolean());
    assertEquals(720, test.get("arrangements").asInt());
    assertEquals(5.0 / 720, test.at("/coefficients/0/pValue").asDouble(), 1e-15);
    assertEquals(5.0 / 720, test.at("/moderatorTest/pValue").asDouble(), 1e-15);
  }

  @Test
  void arrangementsAtRandomComeNearAllOfThemAndAreTheSameEachTime() {
    String asked =
        "{'model':'common-effect','moderators':['h'],'permutationTest':{'permutations':%d}}";
    // Six a and six b: 12!/(6! 6!) = 924 different arrangements.
    JsonNode exact = result(String.format(asked, 1000)).at("/regression/permutationTest");
    JsonNode drawn = result(String.format(asked, 900)).at("/regression/permutationTest");
    assertEquals(924, exact.get("arrangements").asInt());
    assertFalse(drawn.get("exact").asBoolean());
    assertEquals(901, drawn.get("arrangements").asInt());
    double p = exact.at("/coefficients/0/pValue").asDouble();
    // Four standard errors of a share in 900 draws.
    assertEquals(
        p, drawn.at("/coefficients/0/pValue").asDouble(), 4 * Math.sqrt(p * (1 - p) / 900));
    assertEquals(drawn, result(String.format(asked, 900)).at("/regression/permutationTest"));
  }

  @Test
  void leavingAStudyOutIsTheRegressionOfTheOthers() {
    JsonNode whole = result("{'moderators':['x','g'],'influence':true}");
    assertFalse(whole.has("influence"));
    JsonNode without = whole.at("/regression/leaveOneOut/4");
    assertEquals("Study 5", without.get("omitted").asText());
    ArrayNode rows = studies(1);
    rows.remove(4);
    JsonNode others = Plans.result(plan(rows, "{'moderators':['x','g']}"));
    assertEquals(others.at("/regression/coefficients"), without.get("coefficients"));
    assertEquals(others.at("/heterogeneity/tauSquared"), without.get("tauSquared"));
  }
}
