package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.ForestRow;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Complications counted among patients, of which one can have several: a rate for each patient and
 * no share. All series are invented.
 */
class RatesForEachPatientTest {
  private static final Outcome COMPLICATIONS = Outcome.of("complications");
  private static final String TRANSPORT = "bone-transport";
  private static final String MEMBRANE = "induced-membrane";
  private static final String AUTOGRAFT = "autograft";

  @TempDir private static Path home;
  private static InventedBase base;
  private static Answers answers;

  @BeforeAll
  static void open() {
    List<Study> studies =
        List.of(
            study("a", arm("A", TRANSPORT, 5), tally("A", 15, 28)),
            study("b", arm("A", TRANSPORT, 7), tally("A", 40, 25)),
            study("c", arm("A", TRANSPORT, 9), tally("A", 0, 12)),
            study("d", arm("A", TRANSPORT, 4), mean("A", 20, 0.7, 0.9)),
            study("e", arm("A", AUTOGRAFT, 3), tally("A", 0, 10)),
            study("f", arm("A", AUTOGRAFT, 2), tally("A", 0, 9)),
            study(
                "g",
                List.of(arm("A", TRANSPORT, 6), arm("B", MEMBRANE, 6)),
                List.of(tally("A", 24, 20), tally("B", 12, 20))),
            study(
                "h",
                List.of(arm("A", TRANSPORT, 8), arm("B", MEMBRANE, 8)),
                List.of(tally("A", 20, 16), tally("B", 10, 16))),
            study("i", arm("A", MEMBRANE, 5), tally("A", 14, 25)),
            study("j", arm("A", MEMBRANE, 5), tally("A", 9, 14)));
    base = InventedBase.of(home, studies);
    answers = base.answers();
  }

  @AfterAll
  static void close() {
    base.close();
  }

  private static Arm arm(String id, String method, double centimetres) {
    return Arm.with(id, MethodUsed.of(Method.of(method)))
        .baseline(
            Baseline.with()
                .patients(30)
                .defect(
                    DefectLength.of(
                        QuantitySummary.with(Unit.CENTIMETRES).mean(centimetres).build()))
                .build())
        .build();
  }

  private static OutcomeReport tally(String arm, int events, int among) {
    return report(arm, new ReportedValue.Tally(events, OptionalInt.of(among)));
  }

  private static OutcomeReport mean(String arm, int n, double mean, double deviation) {
    return report(
        arm,
        new ReportedValue.Quantity(
            QuantitySummary.with(Unit.PER_PATIENT)
                .n(n)
                .mean(mean)
                .standardDeviation(deviation)
                .build()));
  }

  private static OutcomeReport report(String arm, ReportedValue value) {
    return OutcomeReport.with(new Scope.OneArm(arm), COMPLICATIONS, value).build();
  }

  private static Study study(String id, Arm arm, OutcomeReport report) {
    return study(id, List.of(arm), List.of(report));
  }

  private static Study study(String id, List<Arm> arms, List<OutcomeReport> reports) {
    return Study.with(id, Citation.with("Invented series " + id).firstAuthor(id).year(2020).build())
        .invented(true)
        .arms(arms)
        .outcomes(reports)
        .build();
  }

  private static Answer ask(String... methods) {
    return answers.ask(
        Question.about(COMPLICATIONS, SearchRequest.EVERYTHING.withMethods(Set.of(methods))));
  }

  private static Forest forest(Answer answer) {
    return AnswerForest.of(answer, answer.result().orElseThrow(), Edition.ofProgram("test"));
  }

  /**
   * The plan over a table of the same counts, whose likelihood is held to published data elsewhere.
   */
  @Test
  void fifteenComplicationsInTwentyEightPatientsArePooledAsARateOverPatients() {
    Answer answer = ask(TRANSPORT);
    ObjectNode plan = answer.plan().orElseThrow();
    assertEquals("incidence-rate", plan.path("measure").asText());
    assertEquals("events", plan.at("/source/evidence/countedAs").asText());
    String table =
        """
        {"source":{"rows":[{"study":"a","events":15,"personTime":28},
          {"study":"b","events":40,"personTime":25},{"study":"c","events":0,"personTime":12},
          {"study":"g","events":24,"personTime":20},{"study":"h","events":20,"personTime":16}]},
         "measure":"incidence-rate","model":"bayesian","likelihood":"exact"}
        """;
    Result direct =
        ((PlanOutcome.Done) Runner.withoutEvidence().run(table, Optional.empty())).result();
    Result.Summary of = SynthesisResult.of(answer.result().orElseThrow()).summary().orElseThrow();
    assertEquals(
        SynthesisResult.of(direct).summary().orElseThrow().shown().estimate(),
        of.shown().estimate(),
        1e-9);
    Told told = Blocks.told(answer, answer.result().orElseThrow()).get(0);
    assertEquals(
        "Bone transport in an external frame: 99 events in 101 patients, in 5 series; no average is"
            + " given, for its 95 % interval runs from 0.52 to 18.7: see the series one by one.",
        told.sentence());
  }

  /** Series that differ little leave an average that can be told, in events for each patient. */
  @Test
  void fourSeriesOfAboutTheSameRateHaveAnAverageOverCentres() {
    Answer answer = ask(MEMBRANE);
    Told told = Blocks.told(answer, answer.result().orElseThrow()).get(0);
    assertEquals("45 events in 75 patients, in 4 series; on average over centres ", told.lead());
    assertTrue(told.value().orElseThrow().endsWith(" per patient"), told::toString);
    assertTrue(told.then().stream().anyMatch(one -> one.contains("with half of that")));
  }

  /** 15 over 28 is 0.5357. */
  @Test
  void aRowSaysEventsInPatientsAndTheRateForEach() {
    Forest forest = forest(ask(TRANSPORT));
    ForestRow row =
        forest.blocks().get(0).rows().stream()
            .filter(one -> one.study().startsWith("a "))
            .findFirst()
            .orElseThrow();
    assertEquals("15 in 28", row.counts());
    assertEquals(15.0 / 28, row.estimate().value(), 1e-12);
    assertTrue(forest.csv().contains("0.54 ("), forest::csv);
  }

  @Test
  void aMeanForEachPatientIsLeftOutWithItsReasonAndNeverMixedIn() {
    Answer answer = ask(TRANSPORT);
    assertEquals(
        List.of("d counted-otherwise"),
        answer.selection().leftOut().stream()
            .map(left -> left.studyId() + " " + left.code())
            .toList());
  }

  @Test
  void noEventInAnySeriesIsSaidOfEventsAndNotOfPatientsWithGoodResults() {
    Answer answer = ask(AUTOGRAFT);
    Told told = Blocks.told(answer, answer.result().orElseThrow()).get(0);
    assertEquals(
        "Autograft without its vessels: no event among 19 patients, in 2 series; no average is"
            + " given, for its 95 % interval runs from 0.00 to 1.1: see the series one by one.",
        told.sentence());
    assertTrue(
        forest(answer).description().contains("leave the average so open that none is drawn"));
  }

  @Test
  void theFunnelAndTheLineOverLengthTakeRatesToo() {
    Answer funnel =
        answers.funnel(
            Question.about(COMPLICATIONS, SearchRequest.EVERYTHING.withMethods(Set.of(TRANSPORT))));
    assertTrue(
        AnswerFunnel.of(funnel, funnel.result().orElseThrow(), Edition.ofProgram("test"))
            .isPresent());
    LengthAnswer bySize =
        answers.byLength(
            Question.about(COMPLICATIONS, SearchRequest.EVERYTHING.withMethods(Set.of(TRANSPORT))),
            LengthShape.LINE);
    assertEquals(Optional.of(LengthShape.LINE), bySize.drawn());
    // A series without an event enters as it is.
    assertTrue(
        bySize.notes().stream().noneMatch(note -> note.contains("half an event")),
        bySize.notes()::toString);
    assertFalse(bySize.figure(Edition.ofProgram("test")).orElseThrow().curve().isEmpty());
  }
}
