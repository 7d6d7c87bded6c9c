package gapwise.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.evidence.Appraisal;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Risk;
import gapwise.problem.Problem;
import gapwise.search.SearchRequest;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A question without series at some risk of bias; all studies are invented. */
class RiskAskedTest {
  private static final Outcome UNION = Outcome.of("union");
  private static final Outcome REFRACTURE = Outcome.of("refracture");

  @TempDir Path folder;
  private Home home;

  @BeforeEach
  void open() {
    home = new Home(folder);
    home.keep(
        study("unjudged"),
        study("good", judged("low", Optional.empty())),
        study("poor", judged("serious", Optional.of(UNION))),
        study("worst", judged("critical", Optional.empty())));
  }

  @AfterEach
  void close() {
    home.close();
  }

  private static Appraisal judged(String risk, Optional<Outcome> outcome) {
    Instrument by = Instrument.of("minors");
    return new Appraisal(
        by,
        by.version(),
        outcome,
        Optional.empty(),
        List.of(),
        Optional.of(new Appraisal.Overall(risk, Optional.empty(), Optional.empty())),
        List.of(),
        Optional.empty());
  }

  private static Study study(String id, Appraisal... appraisals) {
    return Study.with(id, Citation.with("Invented " + id).firstAuthor(id).build())
        .arms(
            List.of(
                Arm.with("A", MethodUsed.of(Method.of("bone-transport")))
                    .baseline(Baseline.with().patients(12).build())
                    .build()))
        .outcomes(Stream.of(UNION, REFRACTURE).map(RiskAskedTest::report).toList())
        .appraisals(List.of(appraisals))
        .build();
  }

  private static OutcomeReport report(Outcome outcome) {
    return OutcomeReport.with(
            new Scope.OneArm("A"), outcome, new ReportedValue.Events(EventCount.of(3, 12)))
        .build();
  }

  private Selection asked(Outcome outcome, Set<Risk> risks) {
    return home.selector()
        .select(Question.about(outcome, SearchRequest.EVERYTHING.withRisks(risks)));
  }

  private static List<String> studies(Selection selection) {
    return selection.rows().stream().map(row -> row.study().id()).toList();
  }

  private static List<String> leftOut(Selection selection) {
    return selection.leftOut().stream()
        .map(one -> one.studyId() + ": " + one.reason().sentence())
        .toList();
  }

  @Test
  void seriesAtSeriousOrCriticalRiskAreLeftOutByNameAndThoseNotRatedStayAndAreCounted() {
    Selection selection = asked(UNION, Risk.neitherSeriousNorCritical());
    assertEquals(List.of("good", "unjudged"), studies(selection));
    assertEquals(
        List.of(
            "poor: Its result was judged to have another risk of bias than asked for: serious risk"
                + " of bias.",
            "worst: Its result was judged to have another risk of bias than asked for: critical"
                + " risk of bias."),
        leftOut(selection));
    assertEquals(
        List.of(
            "Nobody rated the risk of bias of 1 of 2 groups; not rated is not the same as low."),
        selection.notes().stream()
            .filter(note -> note.code().equals("risk-not-rated"))
            .map(Problem::message)
            .toList());
  }

  @Test
  void whatWasJudgedOfAnotherOutcomeKeepsNothingOut() {
    Selection selection = asked(REFRACTURE, Risk.neitherSeriousNorCritical());
    assertEquals(List.of("good", "poor", "unjudged"), studies(selection));
  }

  @Test
  void notRatedIsNeverTakenAsLow() {
    assertEquals(List.of("good"), studies(asked(UNION, Set.of(Risk.LOW))));
    assertEquals(List.of("unjudged"), studies(asked(UNION, Set.of(Risk.NOT_RATED))));
  }

  @Test
  void aQuestionThatDoesNotAskTakesAllAndSaysNothing() {
    Selection selection = asked(UNION, Set.of());
    assertEquals(4, selection.rows().size());
    assertEquals(
        List.of(),
        selection.notes().stream().filter(note -> note.code().equals("risk-not-rated")).toList());
  }
}
