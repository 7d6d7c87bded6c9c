package gapwise.analysis.curves;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.testing.Plans;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What the task {@code reconstruct-curve} refuses, warns of and gives. Invented curves. */
class CurvePlanTest {
  private static final String CURVE =
      "[{'time':0,'survival':1},{'time':2,'survival':0.8},{'time':4,'survival':0.6},"
          + "{'time':6,'survival':0.3},{'time':9,'survival':0.3}]";

  private static PlanOutcome run(String rows, String fields) {
    String plan = "{'task':'reconstruct-curve','source':{'rows':" + rows + "}," + fields + "}";
    return Runner.withoutEvidence().run(plan.replace('\'', '"'), Optional.empty());
  }

  private static JsonNode result(String rows, String fields) {
    JsonNode json = run(rows, fields).json();
    assertFalse(json.has("problems"), json::toString);
    return json;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "[{'time':0,'survival':100},{'time':2,'survival':80}] | column survival percent-survival",
        "[{'time':0,'survival':1},{'time':2,'survival':0.8},{'time':3,'survival':0.9}] | row 3,"
            + " column survival curve-goes-back",
        "[{'time':0,'survival':1},{'time':2,'survival':1.3}] | row 2, column survival"
            + " outside-zero-to-one",
        "[{'time':0,'survival':1},{'time':2,'survival':-0.3}] | row 2, column survival"
            + " outside-zero-to-one",
        "[{'time':3,'survival':1},{'time':2,'survival':0.8}] | row 2, column time times-not-sorted",
        "[{'time':-3,'survival':1}] | row 1, column time time-out-of-range",
        "[{'time':0,'survival':'high'}] | row 1, column survival not-a-number",
        "[{'time':0}] | columns.survival missing-column",
        "[{'time':0,'survival':1,'group':'b'}] | row 1, column group unknown-group",
      })
  void aCurveThatCannotBeIsAProblemWithItsRow(String rows, String expected) {
    List<String> problems = Plans.problems(run(rows, "'groups':{'a':{'patients':10}}"));
    assertTrue(problems.contains(expected), problems::toString);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "'groups':{'a':{'patients':10,'events':11}} | groups.a.events events-exceed-total",
        "'groups':{'a':{'patients':2000000}} | groups.a.patients out-of-range",
        "'groups':{'a':{'patients':10}},'numbersAtRisk':{} | numbersAtRisk wrong-source",
        "'groups':{'a':{'patients':10}},'numbersAtRisk':{'table':'x.csv'} | numbersAtRisk.table"
            + " no-files-here",
        "'groups':{'a':{'patients':10}},'compare':{'group':'a','against':'b'} | compare.against"
            + " unknown-group",
        "'groups':{'a':{'patients':10}},'compare':{'group':'a','against':'a'} | compare.against"
            + " same-group",
        "'groups':{'a':{'patients':10}},'pooledCurve':{'groups':['c']} | pooledCurve.groups[0]"
            + " unknown-group",
        "'groups':{'a':{'patients':10}},'numbersAtRisk':{'rows':[{'time':0,'atRisk':9}]} |"
            + " numbersAtRisk, row 1, column atRisk patients-differ",
        "'groups':{'a':{'patients':10}},'numbersAtRisk':{'rows':[{'time':0,'atRisk':10},"
            + "{'time':3,'atRisk':5},{'time':5,'atRisk':6}]} |"
            + " numbersAtRisk, row 3, column atRisk at-risk-rises",
        "'groups':{'a':{'patients':10}},'numbersAtRisk':{'rows':[{'time':3,'atRisk':5.5}]} |"
            + " numbersAtRisk, row 1, column atRisk not-a-count",
        "'groups':{'a':{'patients':10}},'numbersAtRisk':{'rows':[{'time':3,'atRisk':5},"
            + "{'time':3,'atRisk':5}]} | numbersAtRisk, row 2, column time times-not-sorted",
      })
  void aPlanThatCannotBeIsAProblemAtItsField(String fields, String expected) {
    List<String> problems = Plans.problems(run(CURVE, fields));
    assertTrue(problems.contains(expected), problems::toString);
  }

  @Test
  void aSlipOfThePointerIsLevelledAndTold() {
    JsonNode result =
        result(
            "[{'time':0,'survival':1.004},{'time':2,'survival':0.8},{'time':3,'survival':0.805},"
                + "{'time':4,'survival':0.5}]",
            "'groups':{'a':{'patients':10}}");
    assertTrue(Plans.warnings(result).contains("reading-levelled"));
    assertEquals(5, result.at("/curves/0/events").asInt());
  }

  @Test
  void aRisingCurveOfEventsIsTheSameTurnedOver() {
    String rising = CURVE;
    for (String[] turn :
        new String[][] {
          {":1}", ":0}"}, {":0.8}", ":0.2}"}, {":0.6}", ":0.4}"}, {":0.3}", ":0.7}"}
        }) {
      rising = rising.replace(turn[0], turn[1]);
    }
    String groups = "'groups':{'a':{'patients':10}},'horizon':8";
    assertEquals(
        result(CURVE, groups).get("curves").toString(),
        result(rising, groups + ",'as':'cumulative-events'").get("curves").toString());
    assertTrue(
        run(rising, groups).json().toString().contains("cumulative-events"),
        "the refusal names the field that would read it");
  }

  @Test
  void whatWasReportedAndDoesNotComeOutIsTold() {
    JsonNode result = result(CURVE, "'groups':{'a':{'patients':10,'events':3,'median':3}}");
    List<String> warnings = Plans.warnings(result);
    assertTrue(warnings.contains("events-not-reproduced"), warnings::toString);
    assertTrue(warnings.contains("median-not-reproduced"), warnings::toString);
    JsonNode fits = result(CURVE, "'groups':{'a':{'patients':10,'events':7,'median':6}}");
    assertEquals(
        List.of("limits-left-out"),
        Plans.warnings(fits),
        "ten patients, of whom three stay, leave the median open above");
  }

  @Test
  void numbersAtRiskThatTheCurveLeavesNoRoomForAreTold() {
    JsonNode result =
        result(
            CURVE,
            "'groups':{'a':{'patients':10}},'numbersAtRisk':{'rows':[{'time':7,'atRisk':8}]}");
    List<String> warnings = Plans.warnings(result);
    assertTrue(warnings.contains("numbers-at-risk-not-reproduced"), warnings::toString);
  }

  @Test
  void withoutNumbersAtRiskAndEventsThatNobodyWasLostIsSaid() {
    JsonNode result = result(CURVE, "'groups':{'a':{'patients':10}}");
    assertTrue(Plans.warnings(result).contains("censoring-assumed"));
  }

  @Test
  void theTimesPutBackCanBeAskedAgainAsPatients() {
    JsonNode curve =
        result(CURVE, "'groups':{'a':{'patients':10,'events':7}},'horizon':8,'survivalAt':[5]")
            .at("/curves/0");
    ObjectNode plan = JsonNodeFactory.instance.objectNode();
    plan.put("task", "survival").put("horizon", 8);
    plan.putArray("survivalAt").add(5);
    plan.putObject("source").set("rows", curve.get("individuals"));
    JsonNode again = Plans.result(plan).at("/curves/0");
    for (String field : List.of("median", "restrictedMean", "survivalAt", "individuals")) {
      assertEquals(curve.get(field), again.get(field), field);
    }
  }

  static LongStream seeds() {
    return LongStream.range(0, 60);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void randomReadingsGiveAResultOrProblemsAndNeverAnException(long seed) {
    Random random = new Random(seed);
    ObjectNode plan = JsonNodeFactory.instance.objectNode();
    plan.put("task", "reconstruct-curve");
    ArrayNode rows = plan.putObject("source").putArray("rows");
    ObjectNode groups = plan.putObject("groups");
    ArrayNode marks = JsonNodeFactory.instance.arrayNode();
    for (String group : List.of("a", "b", "c")) {
      int patients = 1 + random.nextInt(40);
      groups.putObject(group).put("patients", patients);
      if (random.nextBoolean()) {
        ((ObjectNode) groups.get(group)).put("events", random.nextInt(patients + 1));
      }
      double height = 1;
      double slip = random.nextInt(10) == 0 ? 0.05 : 0.005;
      for (int t = 0; t < 1 + random.nextInt(30); t++) {
        height *= 1 - random.nextDouble() * random.nextDouble() * 0.3;
        ObjectNode row = rows.addObject().put("group", group).put("time", t);
        row.put("survival", Math.max(0, height + slip * (random.nextDouble() - 0.5)));
      }
      marks.addObject().put("group", group).put("time", 7).put("atRisk", random.nextInt(patients));
    }
    if (random.nextBoolean()) {
      plan.putObject("numbersAtRisk").set("rows", marks);
    }
    plan.put("horizon", 1 + random.nextInt(20));
    plan.putArray("survivalAt").add(3).add(12).add(90);
    plan.putObject("compare").put("group", "a").put("against", "b");
    plan.putObject("pooledCurve");
    Runner runner = Runner.withoutEvidence();
    PlanOutcome outcome = runner.run(plan, Optional.empty());
    if (outcome instanceof PlanOutcome.Wrong wrong) {
      assertTrue(wrong.problems().stream().noneMatch(p -> p.where().isEmpty()));
      return;
    }
    JsonNode json = Plans.result(plan);
    for (JsonNode curve : json.get("curves")) {
      int patients = groups.get(curve.get("group").asText()).get("patients").asInt();
      assertEquals(patients, curve.get("patients").asInt());
      assertEquals(patients, curve.get("individuals").size());
    }
    assertEquals(json.toString(), runner.run(json.get("plan"), Optional.empty()).json().toString());
  }
}
