package gapwise.analysis.curves;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.Runner;
import gapwise.analysis.testing.Plans;
import gapwise.analysis.testing.PublishedChecks;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The task {@code survival} on invented times to union of 87 limbs in four studies. Expected values
 * of single curves and comparisons were computed once from the same file with the library survival
 * 3.5-3 of R (survfit with conf.type log-log and rmean 18, coxph with Efron's ties, survdiff);
 * those of the pooled curve in Python with numpy by other code (deviations and their expectation as
 * products of matrices).
 */
class SurvivalPlanTest {
  private static final double CLOSE = 1e-10;

  private static JsonNode run(String fields) {
    try {
      Path folder = Path.of(SurvivalPlanTest.class.getResource("/survival").toURI());
      String plan =
          "{'task':'survival','source':{'table':'invented-union-times.csv'}" + fields + "}";
      return Runner.withoutEvidence().run(plan.replace('\'', '"'), Optional.of(folder)).json();
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Without studies: the column of studies is named by nobody. */
  private static JsonNode together(String fields) {
    JsonNode table = run("").at("/curves");
    StringBuilder rows = new StringBuilder();
    for (JsonNode curve : table) {
      for (JsonNode patient : curve.get("individuals")) {
        rows.append(rows.length() == 0 ? "" : ",")
            .append("{'group':")
            .append(curve.get("group"))
            .append(",'time':")
            .append(patient.get("time"))
            .append(",'event':")
            .append(patient.get("event"))
            .append("}");
      }
    }
    String plan = "{'task':'survival','source':{'rows':[" + rows + "]}" + fields + "}";
    return Runner.withoutEvidence().run(plan.replace('\'', '"'), Optional.empty()).json();
  }

  @ParameterizedTest
  @CsvSource({
    "curves[group=transport].patients, 46",
    "curves[group=transport].events, 38",
    "curves[group=transport].median, 8",
    "curves[group=transport].medianLower, 6",
    "curves[group=transport].medianUpper, 9",
    "curves[group=transport].restrictedMean, 8.94916034046469",
    "curves[group=transport].restrictedMeanStandardError, 0.752079588006665",
    "curves[group=transport].survivalAt[time=6].survival, 0.586956521739130",
    "curves[group=transport].survivalAt[time=6].standardError, 0.0725975450727341",
    "curves[group=transport].survivalAt[time=6].lower, 0.4318059698154471",
    "curves[group=transport].survivalAt[time=6].upper, 0.713165235165702",
    "curves[group=transport].survivalAt[time=12].survival, 0.212560386473430",
    "curves[group=transport].survivalAt[time=18].standardError, 0.0627065034271347",
    "curves[group=membrane].patients, 41",
    "curves[group=membrane].events, 40",
    "curves[group=membrane].median, 5",
    "curves[group=membrane].medianLower, 5",
    "curves[group=membrane].medianUpper, 7",
    "curves[group=membrane].restrictedMean, 6.89268292682927",
    "curves[group=membrane].restrictedMeanStandardError, 0.604669419605930",
    "curves[group=membrane].survivalAt[time=12].lower, 0.0406782986558700",
    "curves[group=membrane].survivalAt[time=12].upper, 0.237678508490236",
    "curves[group=membrane].survivalAt[time=18].survival, 0",
    "comparison.logHazardRatio, 0.519657856962304",
    "comparison.standardError, 0.230972893418158",
    "comparison.logRank.chiSquared, 5.32427063223917",
  })
  void curvesAndTheirComparisonAgreeWithAnotherLibrary(String place, double expected) {
    JsonNode result =
        together(
            ",'horizon':18,'survivalAt':[6,12,18],"
                + "'compare':{'group':'membrane','against':'transport'}");
    JsonNode found = PublishedChecks.at(result, place);
    assertTrue(found.isNumber(), result::toString);
    assertEquals(expected, found.asDouble(), CLOSE);
  }

  @Test
  void withStudiesGroupsAreComparedWithinStudies() {
    JsonNode result = run(",'compare':{'group':'membrane','against':'transport'}");
    assertEquals(8, result.get("curves").size());
    assertEquals(4, result.at("/comparison/strata").asInt());
    assertEquals(0.517992520340711, result.at("/comparison/logHazardRatio").asDouble(), CLOSE);
    assertEquals(0.247364688497501, result.at("/comparison/standardError").asDouble(), CLOSE);
    assertEquals(4.50795767891646, result.at("/comparison/logRank/chiSquared").asDouble(), CLOSE);
  }

  @ParameterizedTest
  @CsvSource({
    "transport, 4, 4, 0.7608695652173914, 0.08265771673985414, 0.4889137432068749, 0.900885246205345",
    "transport, 6, 4, 0.5869565217391305, 0.12368470642021359, 0.327800176746952, 0.7752874958279015",
    "transport, 8, 4, 0.4565217391304349, 0.1608723630219467, 0.22170546274204778, 0.6648777590854328",
    "transport, 12, 4, 0.2069624633431433, 0.3024868625369292, 0.054895102873246476,"
        + " 0.4253098432914423",
    "membrane, 4, 4, 0.6857446704529311, 0.14520759127152857, 0.27688095455990597, 0.895095638227916",
    "membrane, 8, 4, 0.26939969196365154, 0.29573400352704676, 0.06801573278068627,"
        + " 0.5273204694144009",
    "membrane, 10, 4, 0.1461984760486507, 0.5624840136818586, 0.007611482386572703,"
        + " 0.46864840418574033",
  })
  void aPooledCurveAgreesWithOtherCode(
      String group,
      int time,
      int studies,
      double survival,
      double standardError,
      double lower,
      double upper) {
    JsonNode result = run(",'pooledCurve':{'times':[4,6,8,10,12]}");
    String place = "pooledCurves[group=" + group + "].times[time=" + time + "]";
    JsonNode at = PublishedChecks.at(result, place);
    assertTrue(at.isObject(), result::toString);
    assertEquals(studies, at.get("studies").asInt());
    assertEquals(survival, at.get("survival").asDouble(), CLOSE);
    assertEquals(standardError, at.get("standardErrorOfLog").asDouble(), CLOSE);
    assertEquals(lower, at.get("lower").asDouble(), CLOSE);
    assertEquals(upper, at.get("upper").asDouble(), CLOSE);
  }

  @Test
  void restrictedMeansArePooledAsMeansOfStudiesAre() {
    JsonNode result = run(",'horizon':8,'pooledCurve':{}");
    JsonNode pooled = PublishedChecks.at(result, "pooledCurves[group=transport].restrictedMean");
    StringBuilder rows = new StringBuilder();
    for (JsonNode curve : result.get("curves")) {
      if (curve.get("group").asText().equals("transport")) {
        rows.append(rows.length() == 0 ? "" : ",")
            .append("{'effect':")
            .append(curve.get("restrictedMean"))
            .append(",'standardError':")
            .append(curve.get("restrictedMeanStandardError"))
            .append("}");
      }
    }
    String plan = "{'source':{'rows':[" + rows + "]},'measure':'reported-effect'}";
    JsonNode again = Runner.withoutEvidence().run(plan.replace('\'', '"'), Optional.empty()).json();
    assertEquals(4, pooled.get("studies").asInt());
    assertEquals(
        again.at("/summary/estimate").asDouble(), pooled.at("/summary/estimate").asDouble(), CLOSE);
    assertEquals(
        again.at("/summary/predictionUpper").asDouble(),
        pooled.at("/summary/predictionUpper").asDouble(),
        CLOSE);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "[{'time':1,'event':2}] || row 1, column event not-an-event",
        "[{'time':-1,'event':1}] || row 1, column time time-out-of-range",
        "[{'time':'soon','event':1}] || row 1, column time not-a-number",
        "[{'time':1}] || columns.event missing-column",
        "[{'time':1,'event':1}] |,'compare':{'group':'a','against':'b'}| columns.group"
            + " missing-column",
        "[{'time':1,'event':1,'group':'a'}] |,'compare':{'group':'a','against':'b'}|"
            + " compare.against unknown-group",
        "[{'time':1,'event':1}] |,'pooledCurve':{'times':[3,2]}| pooledCurve.times[1]"
            + " times-not-sorted",
        "[{'event':1,'time':' '}] || source no-rows",
      })
  void whatCannotBeIsAProblemWithItsPlace(String rows, String fields, String expected) {
    String plan =
        "{'task':'survival','source':{'rows':"
            + rows
            + "}"
            + Optional.ofNullable(fields).orElse("")
            + "}";
    assertEquals(
        List.of(expected),
        Plans.problems(Runner.withoutEvidence().run(plan.replace('\'', '"'), Optional.empty())));
  }

  private static JsonNode rows(String rows, String fields) {
    String plan = "{'task':'survival','source':{'rows':" + rows + "}" + fields + "}";
    JsonNode json = Runner.withoutEvidence().run(plan.replace('\'', '"'), Optional.empty()).json();
    assertFalse(json.has("problems"), json::toString);
    return json;
  }

  @Test
  void eventsInOneGroupOnlyGiveNoRatioButATest() {
    JsonNode result =
        rows(
            "[{'group':'a','time':1,'event':1},{'group':'a','time':2,'event':1},"
                + "{'group':'b','time':3,'event':0},{'group':'b','time':4,'event':0}]",
            ",'compare':{'group':'a','against':'b'}");
    assertFalse(result.get("comparison").has("logHazardRatio"));
    assertTrue(result.get("comparison").has("logRank"));
    assertTrue(Plans.warnings(result).contains("monotone-likelihood"));
  }

  @Test
  void groupsNeverAtRiskTogetherGiveNeitherRatioNorTest() {
    JsonNode result =
        rows(
            "[{'group':'a','time':1,'event':0},{'group':'b','time':2,'event':1}]",
            ",'compare':{'group':'a','against':'b'}");
    assertFalse(result.get("comparison").has("logHazardRatio"));
    assertFalse(result.get("comparison").has("logRank"));
    assertTrue(Plans.warnings(result).contains("no-information"));
  }

  @Test
  void whatFollowUpDoesNotReachIsLeftOutAndTold() {
    JsonNode result =
        rows(
            "[{'time':5,'event':1},{'time':8,'event':0},{'time':9,'event':0}]",
            ",'horizon':12,'survivalAt':[9,10]");
    JsonNode curve = result.at("/curves/0");
    assertFalse(curve.has("restrictedMean"));
    assertFalse(curve.has("median"));
    assertTrue(curve.at("/survivalAt/0").has("survival"));
    assertFalse(curve.at("/survivalAt/1").has("survival"));
    assertEquals(
        List.of("median-not-reached", "follow-up-too-short", "follow-up-too-short"),
        Plans.warnings(result));
  }
}
