package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.evidence.Arm;
import gapwise.evidence.Citation;
import gapwise.evidence.Detail;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.forest.Block;
import gapwise.figure.forest.Forest;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One method pooled by the words of a detail. All series are invented. */
class SplitByDetailTest {
  private static final String TRANSPORT = "bone-transport";
  private static final DetailKind BESIDE =
      DetailKind.ofMethods().get("internal-fixation-beside-frame");
  private static final DetailKind LEVELS = DetailKind.ofMethods().get("transport-levels");

  private static final int[][] NAILED = {{18, 20}, {27, 28}, {11, 12}};
  private static final int[][] FRAME_ALONE = {{14, 20}, {20, 31}};
  private static final int[][] SILENT = {{9, 12}, {30, 33}};

  @TempDir private static Path home;
  private static InventedBase base;

  @BeforeAll
  static void open() {
    List<Study> studies = new ArrayList<>();
    studies.addAll(studies(TRANSPORT, "nail", NAILED));
    studies.addAll(studies(TRANSPORT, "none", FRAME_ALONE));
    studies.addAll(studies(TRANSPORT, "", SILENT));
    studies.addAll(studies("autograft", "", new int[][] {{8, 10}}));
    base = InventedBase.of(home, studies);
  }

  @AfterAll
  static void close() {
    base.close();
  }

  private static List<Study> studies(String method, String word, int[][] series) {
    List<Study> studies = new ArrayList<>();
    for (int i = 0; i < series.length; i++) {
      String id = method + "-" + (word.isEmpty() ? "silent" : word) + "-" + i;
      Arm.Builder arm = Arm.with("A", MethodUsed.of(Method.of(method)));
      if (!word.isEmpty()) {
        arm.details(new TreeMap<>(Map.of(BESIDE.code(), new Detail(word, OptionalDouble.empty()))));
      }
      studies.add(
          Study.with(id, Citation.with("Invented series " + id).firstAuthor(id).year(2020).build())
              .invented(true)
              .arms(List.of(arm.build()))
              .outcomes(
                  List.of(
                      OutcomeReport.with(
                              new Scope.OneArm("A"),
                              Outcome.of("union"),
                              new ReportedValue.Events(EventCount.of(series[i][0], series[i][1])))
                          .counted(CountedUnit.LIMBS)
                          .build()))
              .build());
    }
    return studies;
  }

  private static Answer ask(Set<String> methods, DetailKind split) {
    return base.answers()
        .ask(
            Question.about(Outcome.of("union"), SearchRequest.EVERYTHING.withMethods(methods)),
            Optional.of(split));
  }

  private static Answer split() {
    return ask(Set.of(TRANSPORT), BESIDE);
  }

  private static List<Told> told(Answer answer) {
    return Blocks.told(answer, answer.result().orElseThrow());
  }

  /** The average of the same counts as a table, with no groups at all. */
  private static String average(int[][] series) {
    StringBuilder rows = new StringBuilder();
    for (int[] one : series) {
      rows.append(rows.isEmpty() ? "" : ",")
          .append("{\"events\":%d,\"total\":%d}".formatted(one[0], one[1]));
    }
    String plan =
        """
        {"source":{"rows":[%s]},"measure":"proportion","model":"bayesian","likelihood":"exact"}
        """
            .formatted(rows);
    Result result =
        ((PlanOutcome.Done) Runner.withoutEvidence().run(plan, Optional.empty())).result();
    Result.Shown shown = SynthesisResult.of(result).summary().orElseThrow().shown();
    return "%.0f of 100".formatted(100 * shown.average().orElseThrow());
  }

  @Test
  void eachWordIsPooledByItselfAndSilenceApart() {
    List<Told> told = told(split());
    assertEquals(
        List.of(
            "Nail or plate beside the frame, none",
            "Nail or plate beside the frame, nail",
            "Nail or plate beside the frame, not stated"),
        told.stream().map(Told::heading).toList());
    assertEquals(average(FRAME_ALONE), told.get(0).value().orElseThrow());
    assertEquals(average(NAILED), told.get(1).value().orElseThrow());
    assertEquals(average(SILENT), told.get(2).value().orElseThrow());
    assertTrue(told.get(1).sentence().contains("56 of 60 limbs united, in 3 series"));
  }

  @Test
  void thatTheyAreSeparatePatientsStandsOnTheFigure() {
    Answer answer = split();
    Forest forest =
        AnswerForest.of(answer, answer.result().orElseThrow(), Edition.ofProgram("test"));
    assertEquals(3, forest.blocks().size());
    assertTrue(forest.blocks().stream().map(Block::name).allMatch(name -> name.contains("frame")));
    assertTrue(
        forest.heading().sentences().get(0).startsWith("These are separate groups of patients"),
        forest.heading()::toString);
    assertTrue(forest.heading().sentences().get(0).contains("nail or plate beside the frame"));
  }

  @Test
  void whatElseDiffersBetweenTheGroupsStandsBeside() {
    Answer answer = split();
    ComparisonAlert alert = ComparisonAlert.of(answer, answer.result().orElseThrow()).orElseThrow();
    assertEquals("Nail or plate beside the frame", alert.head());
    assertEquals(
        List.of("none 2", "nail 3", "not stated 2"),
        alert.lines().stream().map(line -> line.of().name() + " " + line.series()).toList());
  }

  @Test
  void theTableNamesWordsThatNobodyStates() {
    Answer answer = split();
    MethodTable table =
        MethodTable.of(answer, answer.result().orElseThrow(), Set.of()).orElseThrow();
    assertEquals(
        List.of("none", "nail", "plate", "nail and plate", "mixed", "not stated"),
        table.lines().stream().map(line -> line.of().name()).toList());
    assertTrue(table.lines().get(2).finding() instanceof MethodLine.NoStudy);
  }

  @Test
  void theGroupsAreNotTestedAgainstEachOther() {
    SynthesisResult result = SynthesisResult.of(split().result().orElseThrow());
    assertTrue(result.groups().orElseThrow().betweenSubgroups().pValue().isEmpty());
    assertTrue(
        split().result().orElseThrow().warnings().stream()
            .anyMatch(warning -> warning.code().equals("groups-of-patients-differ")));
  }

  @Test
  void severalMethodsAreNotSplitByADetailOfOne() {
    Answer answer = ask(Set.of(), BESIDE);
    assertEquals("method", answer.plan().orElseThrow().path("subgroup").asText());
    assertEquals(2, told(answer).size());
  }

  @Test
  void nothingIsSplitByADetailThatNoSeriesStates() {
    Answer answer = ask(Set.of(TRANSPORT), LEVELS);
    assertFalse(answer.plan().orElseThrow().has("subgroup"));
    assertEquals(1, told(answer).size());
  }
}
