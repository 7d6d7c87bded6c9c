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

/** Moderators that the data cannot bear: how a person is told. */
class RegressionProblemsTest {
  private static ArrayNode rows(int count) {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < count; i++) {
      Plans.row(
          rows,
          "effect",
          0.1 * i * i,
          "variance",
          0.1 + 0.01 * i,
          "x",
          i,
          "same",
          3,
          "twice",
          2 * i + 1);
      ((ObjectNode) rows.get(i))
          .put("g", i % 2 == 0 ? "even" : "odd")
          .put("one", "only")
          .put("mixed", i == 0 ? "unknown" : String.valueOf(i % 2));
    }
    return rows;
  }

  private static ObjectNode plan(ArrayNode rows, String fields) throws Exception {
    ObjectNode plan =
        (ObjectNode) new ObjectMapper().readTree("{" + fields.replace('\'', '"') + "}");
    plan.put("measure", "reported-effect").putObject("source").set("rows", rows);
    return plan;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "6 | 'moderators':['same'] | collinear-moderators",
        "6 | 'moderators':['one'] | collinear-moderators",
        "6 | 'moderators':['x','twice'] | collinear-moderators",
        "6 | 'moderators':['x','same'] | collinear-moderators",
        "6 | 'moderators':['g',{'product':['g','g']}] | collinear-moderators",
        "2 | 'moderators':['x'] | too-few-studies",
        "1 | 'moderators':['x'] | too-few-studies",
        "3 | 'moderators':['x','g'] | too-few-studies",
      })
  void aRegressionThatCannotBeIsLeftOutWithAWarning(int studies, String fields, String code)
      throws Exception {
    JsonNode result = Plans.result(plan(rows(studies), fields));
    assertTrue(Plans.warnings(result).contains(code), result.get("warnings").toString());
    assertFalse(result.has("summary"));
    assertEquals(studies, result.get("studies").size());
    assertFalse(result.has("regression"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "'moderators':['length'] | moderators[0] unknown-column",
        "'moderators':[{'product':['x','length']}] | moderators[0] unknown-column",
        "'moderators':[{'column':'g','centre':1}] | moderators[0] not-a-number",
        "'moderators':[{'column':'g','spline':{'count':3}}] | moderators[0] not-a-number",
        "'moderators':[{'column':'g','reference':'third'}] | moderators[0] unknown-level",
        "'moderators':[{'column':'x','spline':{'knots':[1,3,3]}}] | moderators[0].spline"
            + " knots-do-not-rise",
        "'moderators':[{'column':'same','spline':{'count':3}}] | moderators[0].spline"
            + " knots-do-not-rise",
        "'moderators':[{'column':'x','spline':{'count':9}}] | moderators[0] wrong-value",
        "'moderators':['x','x'] | moderators[1] repeated-term",
        "'moderators':['x'],'predictions':[{'y':1}] | predictions[0].y unknown-column",
        "'moderators':['x'],'predictions':[{'x':'long'}] | predictions[0].x not-a-number",
        "'moderators':['g'],'predictions':[{'g':'third'}] | predictions[0].g unknown-level",
        "'moderators':['g'],'predictions':[{'column':'g','from':1,'to':2}] |"
            + " predictions[0].column unknown-column",
        "'moderators':['x'],'predictions':[{'x':1e300}] | predictions number-out-of-range",
        "'moderators':['x'],'cluster':'nest','robustVariance':'cr1' | cluster unknown-column",
        "'moderators':['x'],'permutationTest':{'permutations':1} | permutationTest.permutations"
            + " out-of-range",
      })
  void aPlanThatDoesNotFitTheDataIsRefusedAtItsPlace(String fields, String expected)
      throws Exception {
    assertEquals(List.of(expected), Plans.problems(plan(rows(6), fields)));
  }

  @Test
  void aBlankModeratorLeavesTheStudyOutOfEverythingButTheList() throws Exception {
    ArrayNode rows = rows(7);
    ((ObjectNode) rows.get(2)).put("x", "");
    JsonNode result =
        Plans.result(plan(rows, "'moderators':['x'],'betweenStudyVariance':'hedges'"));
    ArrayNode fewer = rows(7);
    fewer.remove(2);
    JsonNode without =
        Plans.result(plan(fewer, "'moderators':['x'],'betweenStudyVariance':'hedges'"));
    assertEquals(without.get("regression"), result.get("regression"));
    assertEquals(7, result.get("studies").size());
    assertTrue(result.at("/studies/2/weightPercent").isMissingNode());
    assertTrue(result.at("/studies/3/weightPercent").asDouble() > 0);
    assertEquals("Study 3", result.at("/warnings/0/study").asText());
  }

  @Test
  void numbersBesideTextAreCategoriesAndSaidToBe() throws Exception {
    JsonNode result = Plans.result(plan(rows(9), "'moderators':['mixed']"));
    assertTrue(Plans.warnings(result).contains("numbers-as-categories"));
    assertEquals("mixed=1", result.at("/regression/coefficients/1/term").asText());
    assertEquals("mixed=unknown", result.at("/regression/coefficients/2/term").asText());
  }

  @Test
  void aLevelOfOneStudyMakesTheRegressionRestOnIt() throws Exception {
    JsonNode result = Plans.result(plan(rows(9), "'moderators':['mixed'],'influence':true"));
    assertTrue(Plans.warnings(result).contains("not-without-this-study"));
    assertFalse(result.at("/regression/leaveOneOut/0").has("coefficients"));
    assertTrue(result.at("/regression/leaveOneOut/1").has("coefficients"));
  }

  @Test
  void effectsThatModeratorsFitExactlyHaveNoWidthAndAreSaidSo() throws Exception {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 6; i++) {
      Plans.row(rows, "effect", 0.5 + 0.25 * i, "variance", 0.1 + 0.1 * i, "x", i);
    }
    JsonNode result = Plans.result(plan(rows, "'moderators':['x']"));
    assertEquals(0.25, result.at("/regression/coefficients/1/estimate").asDouble(), 1e-15);
    assertEquals(0, result.at("/regression/coefficients/1/standardError").asDouble());
    assertTrue(Plans.warnings(result).contains("zero-width-interval"));
    assertTrue(result.at("/regression/coefficients/1/pValue").isMissingNode());
  }

  @Test
  void tooFewClustersLeaveTheRobustVarianceOut() throws Exception {
    JsonNode result =
        Plans.result(plan(rows(8), "'moderators':['x'],'cluster':'g','robustVariance':'cr1'"));
    assertTrue(result.has("regression"));
    assertFalse(result.has("robust"));
    assertTrue(Plans.warnings(result).contains("too-few-studies"));
  }
}
