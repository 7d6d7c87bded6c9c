package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.analysis.PlanOutcome;
import gapwise.analysis.result.Result;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.forest.ForestSummary;
import gapwise.search.SearchRequest;
import gapwise.selection.LeftOut;
import gapwise.selection.Question;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Habits of published papers that must neither vanish nor read as more. All studies are invented.
 */
class LiteratureHabitsTest {
  @TempDir private static Path home;
  private static InventedBase base;
  private static Answers answers;

  @BeforeAll
  static void open() {
    List<Study> studies =
        List.of(
            study(
                "silent",
                List.of(arm("A", "mixed-salvage", 0), arm("B", "amputation", 0)),
                List.of(
                    score("A", "sf36-physical", 50),
                    score("B", "sf36-physical", 44),
                    frame("A", 9))),
            study("told", List.of(arm("A", "mixed-salvage", 12)), List.of(frame("A", 11))),
            study(
                "protocols",
                List.of(
                    arm("A", "frame-without-transport", 20),
                    arm("B", "frame-without-transport", 20),
                    arm("C", "frame-without-transport", 20)),
                List.of(
                    union("A", 19, "one level"), union("B", 15, "one level"), union("C", 18, "x"))),
            study(
                "parts",
                List.of(arm("A", "bone-transport", 20)),
                List.of(
                    complications("A", 1.5, "minor complications for each patient"),
                    complications("A", 0.5, "major complications for each patient"))),
            study(
                "full",
                List.of(arm("A", "vascularised-bone-flap", 14)),
                List.of(
                    OutcomeReport.with(
                            new Scope.OneArm("A"),
                            Outcome.of("flap-survival"),
                            new ReportedValue.Events(EventCount.of(14, 14)))
                        .build())));
    base = InventedBase.of(home, studies);
    answers = base.answers();
  }

  @AfterAll
  static void close() {
    base.close();
  }

  private static Arm arm(String id, String method, int patients) {
    Baseline.Builder baseline = Baseline.with();
    if (patients > 0) {
      baseline.patients(patients);
    }
    return Arm.with(id, MethodUsed.of(Method.of(method))).baseline(baseline.build()).build();
  }

  private static Study study(String id, List<Arm> arms, List<OutcomeReport> outcomes) {
    return Study.with(id, Citation.with("Invented " + id).firstAuthor(id).year(2018).build())
        .invented(true)
        .arms(arms)
        .outcomes(outcomes)
        .build();
  }

  private static OutcomeReport score(String arm, String outcome, double mean) {
    return OutcomeReport.with(
            new Scope.OneArm(arm),
            Outcome.of(outcome),
            new ReportedValue.Quantity(
                QuantitySummary.with(Unit.POINTS)
                    .mean(mean)
                    .lowerLimit(mean - 8)
                    .upperLimit(mean + 8)
                    .build()))
        .build();
  }

  private static OutcomeReport frame(String arm, double months) {
    return OutcomeReport.with(
            new Scope.OneArm(arm),
            Outcome.of("external-fixation-time"),
            new ReportedValue.Quantity(QuantitySummary.with(Unit.MONTHS).mean(months).build()))
        .build();
  }

  private static OutcomeReport union(String arm, int events, String definition) {
    return OutcomeReport.with(
            new Scope.OneArm(arm),
            Outcome.of("primary-union"),
            new ReportedValue.Events(EventCount.of(events, 20)))
        .definition(definition)
        .build();
  }

  private static OutcomeReport complications(String arm, double mean, String definition) {
    return OutcomeReport.with(
            new Scope.OneArm(arm),
            Outcome.of("complications"),
            new ReportedValue.Quantity(
                QuantitySummary.with(Unit.PER_PATIENT).mean(mean).standardDeviation(0.4).build()))
        .definition(definition)
        .build();
  }

  private static Answer ask(String outcome, String... methods) {
    return answers.ask(
        Question.about(Outcome.of(outcome), SearchRequest.EVERYTHING.withMethods(Set.of(methods))));
  }

  private static Result result(Answer answer) {
    return answer
        .result()
        .orElseThrow(() -> new AssertionError(answer.outcome().map(PlanOutcome::json).toString()));
  }

  private static List<Told> told(Answer answer) {
    return Blocks.told(answer, result(answer));
  }

  @Test
  void seriesThatDoNotSayOfHowManyPatientsAreListedThoughNoneCanBePooled() {
    Answer answer = ask("sf36-physical");
    Result result = result(answer);
    assertEquals(2, Blocks.of(answer, result).stream().mapToInt(b -> b.lines().size()).sum());
    assertEquals(
        List.of(
            "Amputation, early or late not told apart: no average can be given; see the series one"
                + " by one.",
            "Limb salvage, methods not told apart: no average can be given; see the series one by"
                + " one."),
        told(answer).stream().map(Told::sentence).sorted().toList());
    told(answer)
        .forEach(
            one ->
                assertEquals(List.of("From 1 series that does not say of how many."), one.then()));
  }

  @Test
  void patientsAreNeverCountedAsNoneWhereAPaperDoesNotSayHowMany() {
    assertEquals(
        "From 2 series with 12 patients, not counting 1 that does not say of how many.",
        told(ask("external-fixation-time")).get(0).then().get(0));
  }

  @Test
  void groupsOfOneStudyAreNoCentres() {
    String sentence = told(ask("primary-union")).get(0).sentence();
    assertTrue(sentence.contains("in 3 groups of 1 study; on average over these groups"), sentence);
    assertFalse(sentence.contains("centres"), sentence);
  }

  @Test
  void oneOfSeveralDefinitionsOfOneGroupIsNamedAndTheOthersToo() {
    Answer answer = ask("complications");
    String taken =
        answer.selection().rows().get(0).report().orElseThrow().definition().orElseThrow();
    String other = (taken.startsWith("minor") ? "major" : "minor");
    assertTrue(
        answer.selection().notes().stream()
            .anyMatch(
                note ->
                    note.code().equals("one-of-several-definitions")
                        && note.message().contains("“" + taken + "”")),
        answer.selection().notes()::toString);
    List<String> left = answer.selection().leftOut().stream().map(LeftOut::message).toList();
    assertEquals(
        List.of(
            "The value, defined as “"
                + other
                + " complications for each patient”, was passed over for another one of the same"
                + " arm."),
        left);
  }

  @Test
  void aFullSeriesAloneHasAllItsNumbers() {
    Answer answer = ask("flap-survival");
    List<String> reasons =
        AnswerForest.of(answer, result(answer), Edition.ofProgram("test")).blocks().stream()
            .map(block -> (ForestSummary.NotPooled) block.summary())
            .map(ForestSummary.NotPooled::reason)
            .toList();
    assertEquals(List.of("One series alone."), reasons);
  }
}
