package gapwise.claim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.PlanOutcome.Done;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.answer.Answer;
import gapwise.answer.Answers;
import gapwise.claim.Verdict.Examined;
import gapwise.curation.EvidenceBase;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import gapwise.search.StudyIndex;
import gapwise.selection.Question;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two papers of one first author and year, one randomised and one not; all of it invented. What is
 * said of one must never be said of the other.
 */
class StudiesOfOneNameTest {
  private static final Method TRANSPORT = Method.of("bone-transport");
  private static final Method MEMBRANE = Method.of("induced-membrane");
  private static final Question UNION =
      Question.about(Outcome.of("union"), SearchRequest.EVERYTHING);

  @TempDir Path home;
  private DocumentStore store;
  private StudyIndex search;
  private EvidenceBase base;
  private Answers answers;

  @BeforeEach
  void open() {
    store = DocumentStore.open(home, java.time.Clock.systemUTC());
    search = StudyIndex.open(home.resolve("index"), store, EvidenceBase.STUDY, message -> {});
    base = new EvidenceBase(store);
  }

  @AfterEach
  void close() {
    search.close();
    store.close();
  }

  private void save(Study... studies) {
    base.saveAll(Stream.of(studies).iterator(), "a test", "invented", List.of());
    answers = new Answers(new Selector(search.shown(), base.latest())::select);
  }

  private static OutcomeReport united(String arm, int events) {
    return OutcomeReport.with(
            new Scope.OneArm(arm),
            Outcome.of("union"),
            new ReportedValue.Events(EventCount.of(events, 30)))
        .build();
  }

  private static Arm arm(String id, Method method) {
    return Arm.with(id, MethodUsed.of(method))
        .baseline(Baseline.with().patients(30).build())
        .build();
  }

  private static Study comparison(String id, Design design) {
    return Study.with(id, Citation.with("Paper " + id).firstAuthor("Doublet").year(2015).build())
        .design(design)
        .invented(true)
        .arms(List.of(arm("a", TRANSPORT), arm("b", MEMBRANE)))
        .outcomes(List.of(united("a", 27), united("b", 22)))
        .build();
  }

  /** A randomised paper of the same name, which holds one of the methods alone. */
  private static Study randomisedSeries() {
    return Study.with(
            "trial", Citation.with("Another paper").firstAuthor("Doublet").year(2015).build())
        .design(Design.RANDOMISED)
        .invented(true)
        .arms(List.of(arm("a", TRANSPORT)))
        .outcomes(List.of(united("a", 25)))
        .build();
  }

  @Test
  void aRetrospectiveComparisonIsNotCalledRandomisedBecauseATrialHasItsName() {
    save(comparison("looked-back", Design.RETROSPECTIVE_COMPARATIVE), randomisedSeries());
    Claim claim =
        new Claim(
            new Claim.Side(TRANSPORT, Outcome.of("union"), Optional.empty()),
            Direction.MORE,
            new Claim.Side(MEMBRANE, Outcome.of("union"), Optional.empty()),
            SearchRequest.EVERYTHING,
            Optional.empty(),
            Optional.empty(),
            5);
    Examined told = (Examined) new Claims(answers).examine(claim);
    assertEquals(1, told.direct().compared().orElseThrow().studies());
    assertFalse(told.sentence().contains("small trial"), told.sentence());
    assertTrue(told.sentence().contains("so how they differ may explain it"), told.sentence());
    JsonNode row = told.direct().plan().orElseThrow().at("/source/rows/0");
    assertEquals("looked-back", row.path("studyId").asText());
  }

  @Test
  void rowsOfStudiesOfOneNameCarryTheirIdsFromTheSelectionToTheResult() {
    save(
        comparison("one", Design.RETROSPECTIVE_COMPARATIVE),
        comparison("two", Design.RETROSPECTIVE_COMPARATIVE));
    Answer answer = answers.ask(UNION);
    assertEquals(4, answer.selection().rows().stream().map(SelectedRow::label).distinct().count());
    assertTrue(
        answer.selection().rows().get(0).label().startsWith("Doublet 2015 (one)"),
        answer.selection().rows().get(0).label());
    Result result = answer.result().orElseThrow();
    assertEquals(
        List.of("one/a", "one/b", "two/a", "two/b"),
        SynthesisResult.of(result).studies().stream()
            .map(study -> study.studyId().orElseThrow() + "/" + study.armId().orElseThrow())
            .sorted()
            .toList());
  }

  @Test
  void aNameThatOneStudyHasAloneStaysAsItIs() {
    save(comparison("one", Design.RETROSPECTIVE_COMPARATIVE));
    assertFalse(answers.ask(UNION).selection().rows().get(0).label().contains("("));
  }

  @Test
  void planAndWordsAreOfOneSelectionThoughTheBaseChangesBetween() {
    save(comparison("one", Design.RETROSPECTIVE_COMPARATIVE));
    Selection before = answers.select(UNION);
    save(comparison("two", Design.RETROSPECTIVE_COMPARATIVE));
    Selection after = answers.select(UNION);
    int[] asked = {0};
    Answers changing = new Answers(question -> asked[0]++ == 0 ? before : after);
    Answer answer = changing.ask(UNION);
    assertEquals(
        answer.selection().rows().size(),
        SynthesisResult.of(answer.result().orElseThrow()).studies().size());

    asked[0] = 0;
    Answers.Ran ran = changing.run(answer.plan().orElseThrow().toString(), Optional.empty());
    Result result = ((Done) ran.outcome()).result();
    assertEquals(
        ran.answer().orElseThrow().selection().rows().size(),
        SynthesisResult.of(result).studies().size());
  }
}
