package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.QuantitySummaryBuilder;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.forest.Forest;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Operations for each patient cannot be fewer than none. All series are invented. */
class CountsForEachPatientTest {
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
            study("a", TRANSPORT, operations(20, 0.4).standardDeviation(0.6)),
            study("b", TRANSPORT, operations(20, 0.6).standardDeviation(0.8)),
            study("c", TRANSPORT, operations(12, 0).standardDeviation(0)),
            study("d", MEMBRANE, operations(20, 0.5).standardDeviation(0.7)),
            study("e", MEMBRANE, operations(15, 0)),
            study("f", MEMBRANE, operations(15, 0.7)),
            study("g", AUTOGRAFT, operations(11, 0).standardDeviation(0)),
            study("h", AUTOGRAFT, operations(9, 0).standardDeviation(0)));
    base = InventedBase.of(home, studies);
    answers = base.answers();
  }

  @AfterAll
  static void close() {
    base.close();
  }

  private static QuantitySummaryBuilder operations(int n, double mean) {
    return QuantitySummary.with(Unit.PER_PATIENT).n(n).mean(mean);
  }

  private static Study study(String id, String method, QuantitySummaryBuilder operations) {
    Baseline baseline =
        Baseline.with()
            .patients(20)
            .defect(
                DefectLength.of(
                    QuantitySummary.with(Unit.CENTIMETRES).mean(id.charAt(0) - 92).build()))
            .build();
    return Study.with(id, Citation.with("Invented series " + id).firstAuthor(id).year(2020).build())
        .invented(true)
        .arms(List.of(Arm.with("A", MethodUsed.of(Method.of(method))).baseline(baseline).build()))
        .outcomes(
            List.of(
                OutcomeReport.with(
                        new Scope.OneArm("A"),
                        Outcome.of("unplanned-operations"),
                        new ReportedValue.Quantity(operations.build()))
                    .build()))
        .build();
  }

  private static Question question(String... methods) {
    return Question.about(
        Outcome.of("unplanned-operations"), SearchRequest.EVERYTHING.withMethods(Set.of(methods)));
  }

  private static Told told(String method) {
    Answer answer = answers.ask(question(method));
    return Blocks.told(answer, answer.result().orElseThrow()).get(0);
  }

  /**
   * Logs of 0.4 and 0.6 with variances 0.6^2/(20 0.4^2) and 0.8^2/(20 0.6^2). For two studies the
   * restricted likelihood has its top at (y1 - y2)^2/2 - (v1 + v2)/2, here below 0, so tau squared
   * is 0; Q is below 1, so that the interval is the mean plus and minus 12.7062 (Student's t, one
   * degree of freedom) over the root of the sum of weights. Worked out with SciPy 1.17 by hand.
   */
  @Test
  void anIntervalOfOperationsForEachPatientStaysAboveZero() {
    Result result = answers.ask(question(TRANSPORT)).result().orElseThrow();
    Result.Shown shown = SynthesisResult.of(result).summary().orElseThrow().shown();
    // By a grid of 8,001 by 11,001 points in SciPy: 0.4974, 0.2327 and 1.0449.
    assertEquals(0.49768, shown.estimate(), 5e-4);
    assertEquals(0.23277, shown.lower(), 5e-4);
    assertEquals(1.04555, shown.upper(), 1e-3);
    assertEquals("0.53 per patient", told(TRANSPORT).value().orElseThrow());
    assertTrue(told(TRANSPORT).rest().contains("0.27 to 1.3"), told(TRANSPORT).rest());
  }

  @Test
  void aSeriesWithAMeanOfZeroIsSaidToBeMissingAndWhichWayThatLeads() {
    List<String> then = told(TRANSPORT).then();
    assertEquals("From 2 series with 40 patients.", then.get(0));
    assertTrue(then.get(1).startsWith("1 further series reports a mean of 0"), then::toString);
    assertTrue(then.get(1).contains("would be lower"), then::toString);
    Result result = answers.ask(question(TRANSPORT)).result().orElseThrow();
    assertEquals(
        List.of("c 2020"),
        result.warnings().stream()
            .filter(warning -> warning.code().equals("mean-not-positive"))
            .flatMap(warning -> warning.study().stream())
            .toList());
  }

  @Test
  void oneSeriesThatCanBePooledAmongOthersIsNotCalledTheOnlyOne() {
    Told told = told(MEMBRANE);
    assertTrue(told.rest().contains("in the one series with all numbers needed"), told.rest());
    assertEquals("From 1 series with 20 patients.", told.then().get(0));
    assertTrue(told.then().get(1).startsWith("1 further series reports a mean of 0"));
  }

  @Test
  void whereEverySeriesHasAMeanOfZeroNoAverageIsMadeUp() {
    Told told = told(AUTOGRAFT);
    assertTrue(told.value().isEmpty());
    assertEquals("a mean of 0 in every series", told.rest());
    assertTrue(told.then().get(1).contains("Elsewhere it may come otherwise"));
  }

  @Test
  void theFigureDrawsTheMeanOfZeroAndSaysThatItIsNotInTheAverage() {
    Answer answer = answers.ask(question(TRANSPORT));
    Forest forest =
        AnswerForest.of(answer, answer.result().orElseThrow(), Edition.ofProgram("test"));
    assertTrue(
        forest.notes().stream().anyMatch(note -> note.startsWith("1 series reports a mean of 0")),
        forest.notes()::toString);
    assertEquals(
        1,
        forest.blocks().get(0).rows().stream()
            .filter(row -> row.estimate().value() == 0)
            .filter(row -> row.detail().contains("not in an average: mean 0"))
            .count());
  }

  @Test
  void theLineOverSizeAndTheFunnelSayItToo() {
    LengthAnswer bySize = answers.byLength(question(), LengthShape.LINE);
    List<String> cautions = bySize.figure(Edition.ofProgram("test")).orElseThrow().cautions();
    assertTrue(
        cautions.stream().anyMatch(caution -> caution.startsWith("4 series report a mean of 0")),
        cautions::toString);
    Answer funnel = answers.funnel(question());
    List<String> beside =
        AnswerFunnel.of(funnel, funnel.result().orElseThrow(), Edition.ofProgram("test"))
            .orElseThrow()
            .cautions();
    assertTrue(
        beside.stream().anyMatch(caution -> caution.startsWith("4 series report a mean of 0")),
        beside::toString);
  }

  /** What cannot be negative is pooled by logs; scores and differences of length are not. */
  @Test
  void onlyOutcomesThatCannotBeNegativeArePooledByLogs() {
    Function<String, String> scale =
        code ->
            gapwise.analysis.QuestionPlan.of(
                    Question.about(Outcome.of(code), SearchRequest.EVERYTHING), "", false)
                .orElseThrow()
                .path("scale")
                .asText();
    Set<String> logs =
        Outcome.vocabulary().all().stream()
            .filter(outcome -> !outcome.isEvent())
            .filter(outcome -> outcome.kind() != Outcome.Kind.PHASE)
            .filter(outcome -> outcome.kind() != Outcome.Kind.CATEGORIES)
            .map(Outcome::code)
            .filter(code -> scale.apply(code).equals("log"))
            .collect(Collectors.toSet());
    assertTrue(
        logs.containsAll(Set.of("unplanned-operations", "total-operations")), logs::toString);
    assertTrue(logs.containsAll(Set.of("complications", "blood-loss", "cost", "time-to-union")));
    assertFalse(logs.contains("limb-length-discrepancy"));
    assertFalse(logs.contains("pain"));
  }
}
