package gapwise.analysis.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.EvidenceRows;
import gapwise.analysis.rows.RowValue;
import gapwise.analysis.testing.Plans;
import gapwise.problem.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a plan may not be, and how a person is told. */
class PlanFormTest {
  private final Runner runner = Runner.withoutEvidence();

  private List<String> problems(String plan) {
    return Plans.problems(runner.run(plan.replace('\'', '"'), Optional.empty()));
  }

  @Test
  void everyFaultOfFormIsToldInOneGoWithItsPlace() {
    assertEquals(
        List.of(
            "continuityCorrection.amount out-of-range",
            "continuityCorrection.bar unknown-field",
            "foo unknown-field",
            "level wrong-type",
            "measure unknown-value"),
        problems(
                "{'source':{'rows':[{}]},'foo':1,'continuityCorrection':{'amount':-1,'bar':2},"
                    + "'level':'x','measure':'proportions'}")
            .stream()
            .sorted()
            .toList());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "{} | source missing-field",
        "{'source':5} | source wrong-source",
        "{'source':{'table':'x','rows':[{}]}} | source wrong-source",
        "{'source':{'rows':[]}} | source.rows out-of-range",
        "{'source':{'evidence':{'outcome':'union','planet':1}}} | source.evidence.planet"
            + " unknown-field",
        "{'source':{'rows':[{}]},'columns':{'evnts':'a'}} | columns.evnts unknown-role",
        "{'source':{'rows':[{}]},'pooling':'peto'} | model missing-field",
        "{'source':{'rows':[{}]},'backTransformN':-1} | backTransformN wrong-value",
        "{'source':{'rows':[{}]},'prior':{'mean':'x'}} | prior.mean wrong-value",
        "{'task':'dance','source':{'rows':[{}]}} | task unknown-value",
        "{'task':'interval','source':{'rows':[{}]}} | methods missing-field",
      })
  void aFaultOfFormHasItsPlaceAndCode(String plan, String expected) {
    assertEquals(List.of(expected), problems(plan));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "{", "{'a':1,'a':2}", "{} {}", "[1,", "NaN"})
  void whatIsNoJsonIsToldAsSuch(String text) {
    List<String> found = problems(text);
    assertEquals(1, found.size());
    assertTrue(found.get(0).endsWith("not-json") || text.isEmpty(), found.toString());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "'measure':'risk-ratio','model':'exact-likelihood' | model model-not-for-measure",
        "'model':'network' | model model-not-for-measure",
        "'interval':'t-k-minus-1' | interval interval-not-for-model",
        "'model':'exact-likelihood','scale':'raw' | scale scale-not-for-model",
        "'model':'exact-likelihood','interval':'hartung-knapp' | interval interval-not-for-model",
        "'model':'exact-likelihood','smallStudyEffects':['egger'] | smallStudyEffects"
            + " part-not-for-model",
        "'measure':'incidence-rate-ratio','model':'exact-likelihood','likelihood':'unconditional' |"
            + " likelihood model-not-for-measure",
        "'model':'network','measure':'odds-ratio','interval':'hartung-knapp' | interval"
            + " interval-not-for-model",
        "'model':'common-effect','interval':'hartung-knapp' | interval interval-not-for-model",
        "'measure':'mean','scale':'double-arcsine' | scale scale-not-for-measure",
        "'moderators':['weeks'],'subgroup':'g' | subgroup not-with-moderators",
        "'moderators':['weeks'],'cumulativeBy':'g' | cumulativeBy not-with-moderators",
        "'moderators':['weeks'],'smallStudyEffects':['egger'] | smallStudyEffects"
            + " not-with-moderators",
        "'moderators':['weeks'],'model':'bayesian' | moderators not-with-this-model",
        "'moderators':['weeks'],'model':'common-effect','pooling':'mantel-haenszel',"
            + "'measure':'odds-ratio' | moderators not-with-count-pooling",
        "'predictions':[{'weeks':3}] | moderators missing-field",
        "'model':'network','cluster':'c','robustVariance':'cr1' | robustVariance"
            + " not-with-this-model",
        "'model':'common-effect','pooling':'peto' | pooling pooling-not-for-measure",
      })
  void whatDoesNotGoTogetherOrIsNotDoneYetIsRefusedAtItsField(String fields, String expected) {
    List<String> found = problems("{'source':{'rows':[{'events':1,'total':2}]}," + fields + "}");
    for (String one : expected.split(",")) {
      assertTrue(found.contains(one), found.toString());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "'level':1e999",
        "'level':-1e999",
        "'level':1e-999",
        "'continuityCorrection':{'amount':1e999}",
        "'continuityCorrection':{'amount':1e308}",
        "'scale':'double-arcsine','backTransformN':1e999",
        "'scale':'double-arcsine','backTransformN':1e308,'backTransformAlsoWith':[1e-300,1e300]",
      })
  void numbersBeyondAllBoundsGiveAnAnswerAndNoTrace(String fields) {
    String plan =
        "{'source':{'rows':[{'events':1,'total':4},{'events':2,'total':5}]}," + fields + "}";
    PlanOutcome outcome = runner.run(plan.replace('\'', '"'), Optional.empty());
    assertFalse(outcome.json().toString().contains("Infinity"));
    assertFalse(outcome.json().toString().contains("NaN"));
  }

  @Test
  void wrongCellsAreToldAllAtOnceByRowAndColumn() {
    String rows =
        "{'source':{'rows':[{'events':5,'total':4},{'events':-1,'total':9},"
            + "{'events':'few','total':9},{'events':1.5,'total':9},{'events':1,'total':0},"
            + "{'events':'1e999','total':9}]}}";
    assertEquals(
        List.of(
            "row 1, column events events-exceed-total",
            "row 2, column events negative-count",
            "row 3, column events not-a-number",
            "row 4, column events not-a-whole-number",
            "row 5, column total value-too-small",
            "row 6, column events not-a-number"),
        problems(rows));
  }

  @Test
  void aMissingColumnIsToldWithTheColumnsThereAre() {
    assertEquals(
        List.of("columns.events unknown-column", "columns.total missing-column"),
        problems("{'source':{'rows':[{'a':1}]},'columns':{'events':'evnts'}}"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "'measure':'mean' | {'mean':9} | columns.n | number of patients (n), which 'mean' needs: it gives the study its weight. | a standard deviation (SD) (sd), or a median with both quartiles (median, q1, q3)",
        "'measure':'mean' | {'mean':9,'sd':2} | columns.n | number of patients (n) | have [mean, sd].",
        "'measure':'mean-difference' | {'intervention.mean':9} | columns.intervention.n | of the group 'intervention' | a standard deviation (SD) (intervention.sd)",
        "'measure':'proportion' | {'events':9} | columns.total | number of patients or limbs counted, which 'proportion' needs | Name the column that holds it in columns",
      })
  void aTableThatLacksAColumnIsToldWhatAndWhyInTheWordsOfTheTrade(
      String measure, String row, String place, String what, String more) {
    String plan = "{'source':{'rows':[" + row + "]}," + measure + "}";
    PlanOutcome outcome = runner.run(plan.replace('\'', '"'), Optional.empty());
    Problem problem =
        ((PlanOutcome.Wrong) outcome)
            .problems().stream().filter(one -> one.where().equals(place)).findFirst().orElseThrow();
    assertEquals("missing-column", problem.code());
    assertTrue(problem.message().contains(what), problem.message());
    assertTrue(problem.message().contains(more), problem.message());
    assertFalse(problem.message().contains("role"), problem.message());
  }

  @Test
  void aRowThatLacksAValueIsLeftOutWithAWarning() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "events", 3, "total", 9);
    Plans.row(rows, "events", 4, "total", 8);
    Plans.row(rows, "total", 8);
    JsonNode result = Plans.result(Plans.on(rows));
    assertEquals(3, result.get("studies").size());
    assertTrue(result.at("/studies/2/weightPercent").isMissingNode());
    JsonNode warning = result.get("warnings").get(0);
    assertEquals("missing-value", warning.get("code").asText());
    assertEquals("Study 3", warning.get("study").asText());
  }

  @Test
  void defaultsAreWrittenBackIntoThePlanOfTheResult() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "events", 3, "total", 9);
    Plans.row(rows, "events", 4, "total", 8);
    JsonNode plan = Plans.result(Plans.on(rows)).get("plan");
    for (Map.Entry<String, String> usual :
        Map.of(
                "measure", "proportion",
                "scale", "logit",
                "model", "random-effects",
                "betweenStudyVariance", "restricted-maximum-likelihood",
                "interval", "hartung-knapp-never-narrower",
                "predictionInterval", "t-k-minus-2",
                "tauSquaredInterval", "q-profile",
                "level", "0.95")
            .entrySet()) {
      assertEquals(usual.getValue(), plan.get(usual.getKey()).asText());
    }
    assertEquals(0.5, plan.at("/continuityCorrection/amount").asDouble());
  }

  @Test
  void aSettingWithoutBearingIsSaidToBeUnused() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "n", 9, "mean", 3, "sd", 1);
    Plans.row(rows, "n", 9, "mean", 4, "sd", 1);
    ObjectNode plan = Plans.on(rows, "measure", "mean", "smallSampleCorrection", "exact");
    assertTrue(Plans.warnings(Plans.result(plan)).contains("setting-not-used"));
  }

  @Test
  void tablesAreReadBesideThePlanAndTheirFaultsToldByLine(@TempDir Path folder) throws IOException {
    Files.writeString(folder.resolve("good.csv"), "\uFEFFevents, total\n3,9\n\n4,8\n");
    Files.writeString(folder.resolve("ragged.csv"), "events,total\n3,9\n4\n5,6,7\n");
    Files.writeString(folder.resolve("twice.csv"), "events,events\n3,9\n");
    Files.writeString(folder.resolve("empty.csv"), "events,total\n");
    Files.write(folder.resolve("latin.csv"), new byte[] {'a', '\n', (byte) 0xE9, '\n'});
    PlanOutcome good = table(folder, "good.csv");
    assertEquals(2, good.json().at("/data/studies").asInt());
    assertEquals(64, good.json().at("/data/sha256").asText().length());
    assertEquals(
        List.of("sheet ragged, row 3 (line 3) short-row", "sheet ragged, row 4 (line 4) long-row"),
        Plans.problems(table(folder, "ragged.csv")));
    assertEquals(
        List.of("sheet twice, row 1, column B duplicate-column-name"),
        Plans.problems(table(folder, "twice.csv")));
    assertEquals(List.of("source.table no-rows"), Plans.problems(table(folder, "empty.csv")));
    assertEquals(
        List.of("sheet latin, line 2 not-utf-8"), Plans.problems(table(folder, "latin.csv")));
    assertEquals(
        List.of("source.table file-not-readable"), Plans.problems(table(folder, "none.csv")));
  }

  private PlanOutcome table(Path folder, String name) {
    return runner.run("{\"source\":{\"table\":\"" + name + "\"}}", Optional.of(folder));
  }

  @Test
  void aPlanFromTheNetworkReadsNoFile() {
    assertEquals(
        List.of("source.table no-files-here"), problems("{'source':{'table':'secret.csv'}}"));
  }

  private static Map<String, RowValue> selected(
      String study, int events, int total, String method) {
    return Map.of(
        "study", new RowValue.Text(study),
        "events", new RowValue.Number(events),
        "total", new RowValue.Number(total),
        "method", new RowValue.Text(method));
  }

  @Test
  void evidenceComesFromTheStoreThatIsGivenAndWithoutOneIsRefused() {
    String plan =
        "{'source':{'evidence':{'outcome':'union'}},'subgroup':'method'}".replace('\'', '"');
    assertEquals(
        List.of("source.evidence no-evidence-store"),
        Plans.problems(runner.run(plan, Optional.empty())));
    EvidenceRows store =
        (evidence, measure) ->
            new EvidenceRows.Selected(
                List.of(selected("A", 8, 9, "transport"), selected("B", 7, 9, "membrane")),
                List.of(Result.Warning.of("left-out-of-selection", "one arm has no length")),
                List.of(),
                "ab".repeat(32));
    JsonNode result = Runner.with(store).run(plan, Optional.empty()).json();
    assertEquals("ab".repeat(32), result.at("/data/sha256").asText());
    assertEquals("transport", result.at("/subgroups/0/level").asText());
    assertTrue(Plans.warnings(result).contains("left-out-of-selection"));
  }

  @Test
  void theSameBytesComeFromTheSamePlan() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "events", 3, "total", 9);
    Plans.row(rows, "events", 4, "total", 8);
    assertEquals(Plans.result(Plans.on(rows)).toString(), Plans.result(Plans.on(rows)).toString());
  }
}
