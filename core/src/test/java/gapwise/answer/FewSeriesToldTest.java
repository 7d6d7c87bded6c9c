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
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.forest.ForestSummary;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is said of a share that one, two or five series report. All series are invented. */
class FewSeriesToldTest {
  private static final String ONE = "autograft";
  private static final String TWO = "bone-transport";
  private static final String FIVE = "induced-membrane";

  private static final String ALIKE = "allograft";

  /** One of two and one of two leave an average nearly anywhere. */
  private static final String OPEN = "printed-scaffold";

  private static final int[][] OF_TWO = {{12, 14}, {23, 27}};
  private static final int[][] OF_FIVE = {{12, 14}, {23, 27}, {9, 10}, {30, 41}, {8, 8}};

  @TempDir private static Path home;
  private static InventedBase base;
  private static Answers answers;

  @BeforeAll
  static void open() {
    List<Study> studies = new ArrayList<>(studies(TWO, OF_TWO));
    studies.addAll(studies(ONE, new int[][] {{18, 20}}));
    studies.addAll(studies(FIVE, OF_FIVE));
    studies.addAll(studies(ALIKE, new int[][] {{9, 9}, {12, 12}, {7, 7}, {20, 20}, {11, 11}}));
    studies.addAll(studies(OPEN, new int[][] {{1, 2}, {1, 2}}));
    base = InventedBase.of(home, studies);
    answers = base.answers();
  }

  @AfterAll
  static void close() {
    base.close();
  }

  private static List<Study> studies(String method, int[][] series) {
    List<Study> studies = new ArrayList<>();
    for (int i = 0; i < series.length; i++) {
      String id = method + "-" + i;
      studies.add(
          Study.with(id, Citation.with("Invented series " + id).firstAuthor(id).year(2020).build())
              .invented(true)
              .arms(List.of(Arm.with("A", MethodUsed.of(Method.of(method))).build()))
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

  private static Told told(String method) {
    Answer answer =
        answers.ask(
            Question.about(
                Outcome.of("union"), SearchRequest.EVERYTHING.withMethods(Set.of(method))));
    return Blocks.told(answer, answer.result().orElseThrow()).get(0);
  }

  /** The average of the same counts as a table, under a prior of the spread between centres. */
  private static String average(int[][] series, String scale) {
    StringBuilder rows = new StringBuilder();
    for (int[] one : series) {
      rows.append(rows.isEmpty() ? "" : ",")
          .append("{\"events\":%d,\"total\":%d}".formatted(one[0], one[1]));
    }
    String plan =
        """
        {"source":{"rows":[%s]},"measure":"proportion","model":"bayesian","likelihood":"exact",
         "prior":{"tau":{"halfNormal":%s}}}
        """
            .formatted(rows, scale);
    Result result =
        ((PlanOutcome.Done) Runner.withoutEvidence().run(plan, Optional.empty())).result();
    Result.Shown shown = SynthesisResult.of(result).summary().orElseThrow().shown();
    return "%.0f (%.0f to %.0f)"
        .formatted(
            100 * shown.average().orElseThrow(),
            100 * shown.averageLower().orElseThrow(),
            100 * shown.averageUpper().orElseThrow());
  }

  @Test
  void twoSeriesHaveAnAverageThatIsOfUse() {
    Told told = told(TWO);
    assertEquals(
        "Bone transport in an external frame: 35 of 41 limbs united, in 2 series; on average over"
            + " centres 82 of 100 (95 % interval 52 to 93).",
        told.sentence());
    assertTrue(told.then().stream().anyMatch(one -> one.startsWith("A new centre could expect ")));
  }

  @Test
  void howTheAverageMovesWithWhatIsAssumedIsThatOfThePlansUnderThosePriors() {
    assertTrue(
        told(TWO)
            .then()
            .contains(
                "The average rests in part on how far centres are assumed to differ: with half of"
                    + " that it would be "
                    + average(OF_TWO, "0.5")
                    + ", with twice that "
                    + average(OF_TWO, "2")
                    + "."),
        told(TWO)::toString);
  }

  @Test
  void fiveSeriesSpeakForThemselves() {
    assertFalse(
        told(FIVE).then().stream().anyMatch(one -> one.contains("assumed")), told(FIVE)::toString);
  }

  @Test
  void oneSeriesStandsByItselfAndSaysHowFarTheAverageMayLie() {
    Told told = told(ONE);
    assertEquals(
        "Autograft without its vessels: 18 of 20 limbs united in the one series there is: 90 of 100"
            + " (95 % interval 68 to 99).",
        told.sentence());
    assertTrue(
        told.then().stream()
            .anyMatch(
                one ->
                    one.startsWith("One series says nothing of how results differ")
                        && one.contains("average may lie anywhere from ")),
        told::toString);
  }

  @Test
  void seriesThatAreAllAlikeAreNotSaidToDiffer() {
    Told told = told(ALIKE);
    assertTrue(told.sentence().contains("all 59 limbs united, in 5 series"), told::sentence);
    assertTrue(told.then().stream().noneMatch(one -> one.contains("Results of")), told::toString);
    assertTrue(told(FIVE).then().stream().anyMatch(one -> one.contains("Results of")));
  }

  @Test
  void eachMethodOfSeveralHasItsOwn() {
    Answer all = answers.ask(Question.about(Outcome.of("union"), SearchRequest.EVERYTHING));
    List<Told> together = Blocks.told(all, all.result().orElseThrow());
    assertEquals(4, together.size());
    for (String method : List.of(ONE, TWO, FIVE, ALIKE)) {
      assertTrue(together.contains(told(method)), method);
    }
  }

  @Test
  void anAverageThatCouldLieAnywhereIsNeitherGivenNorDrawn() {
    Answer answer =
        answers.ask(
            new Question(
                Outcome.of("union"),
                SearchRequest.EVERYTHING.withMethods(Set.of(OPEN)),
                Optional.empty(),
                1));
    assertTrue(answer.result().isPresent(), String.valueOf(answer));
    Told told = Blocks.told(answer, answer.result().orElseThrow()).get(0);

    assertTrue(told.value().isEmpty(), told.toString());
    assertTrue(told.rest().contains("2 of 4 limbs united, in 2 series"), told.rest());
    assertTrue(told.rest().contains("no average is given"), told.rest());
    ForestSummary drawn =
        AnswerForest.of(
                answer,
                answer.result().orElseThrow(),
                new Edition("test", OptionalLong.empty(), Optional.empty()))
            .blocks()
            .get(0)
            .summary();
    assertTrue(drawn instanceof ForestSummary.NotPooled, drawn.toString());
  }
}
