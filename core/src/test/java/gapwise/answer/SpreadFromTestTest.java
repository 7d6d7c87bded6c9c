package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.evidence.Arm;
import gapwise.evidence.Citation;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.QuantitySummaryBuilder;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.TestOfMeans;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.ForestRow;
import gapwise.search.SearchRequest;
import gapwise.selection.Conversions;
import gapwise.selection.Question;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Standard deviations from a t test between two groups of a study. The numbers are those of the
 * Cochrane Handbook, 6.5.2.3 (from memory): 25 and 22 patients, difference 3.8, p 0.008, where it
 * finds t 2.78 and a standard deviation of 4.69 on the way by a rounded standard error of 1.37;
 * without rounding SciPy 1.x (stats.t.isf(0.004, 45) = 2.775545369497352) gives 4.6834693413750985.
 * All studies are invented.
 */
class SpreadFromTestTest {
  private static final double BY_SCIPY = 4.6834693413750985;

  @TempDir private static Path home;
  private static InventedBase base;

  @BeforeAll
  static void open() {
    TestOfMeans byP = new TestOfMeans("B", OptionalDouble.empty(), OptionalDouble.of(0.008));
    TestOfMeans byT = new TestOfMeans("B", OptionalDouble.of(-2.78), OptionalDouble.of(0.008));
    base =
        InventedBase.of(
            home,
            List.of(
                study("by-p", Optional.of(byP), false),
                study("by-t", Optional.of(byT), false),
                study("printed", Optional.of(byP), true),
                study("silent", Optional.empty(), false)));
  }

  @AfterAll
  static void close() {
    base.close();
  }

  private static Study study(String id, Optional<TestOfMeans> test, boolean printed) {
    OutcomeReport.Builder first = report("A", mean(12.8, 25, printed));
    test.ifPresent(first::tested);
    return Study.with(id, Citation.with("Invented series " + id).firstAuthor(id).year(2020).build())
        .invented(true)
        .arms(
            List.of(
                Arm.with("A", MethodUsed.of(Method.of("bone-transport"))).build(),
                Arm.with("B", MethodUsed.of(Method.of("induced-membrane"))).build()))
        .outcomes(List.of(first.build(), report("B", mean(9, 22, printed)).build()))
        .build();
  }

  private static ReportedValue mean(double mean, int n, boolean printed) {
    QuantitySummaryBuilder summary = QuantitySummary.with(Unit.MONTHS).mean(mean).n(n);
    if (printed) {
      summary.standardDeviation(3);
    }
    return new ReportedValue.Quantity(summary.build());
  }

  private static OutcomeReport.Builder report(String arm, ReportedValue value) {
    return OutcomeReport.with(new Scope.OneArm(arm), Outcome.of("time-to-union"), value)
        .clock(Clock.DEFINITIVE_OPERATION);
  }

  private static Answer ask(Conversions conversions) {
    return base.answers()
        .ask(
            Question.about(Outcome.of("time-to-union"), SearchRequest.EVERYTHING)
                .withConversions(conversions));
  }

  /** By the variance of the log of a mean, SD squared over n and the squared mean. */
  private static double deviation(String label, double mean, int n) {
    Result.Study row =
        SynthesisResult.of(ask(Conversions.ALL).result().orElseThrow()).studies().stream()
            .filter(one -> one.label().equals(label))
            .findFirst()
            .orElseThrow();
    return Math.sqrt(row.variance().orElseThrow() * n) * mean;
  }

  private static List<String> codes(Answer answer, String study) {
    return answer.result().orElseThrow().warnings().stream()
        .filter(warning -> warning.studyId().filter(study::equals).isPresent())
        .map(Result.Warning::code)
        .distinct()
        .sorted()
        .collect(Collectors.toList());
  }

  private static String label(String study, String arm) {
    return ask(Conversions.ALL).selection().rows().stream()
        .filter(row -> row.study().id().equals(study) && row.arm().id().equals(arm))
        .findFirst()
        .orElseThrow()
        .label();
  }

  @Test
  void anExactPValueGivesBothGroupsTheirCommonDeviation() {
    assertEquals(BY_SCIPY, deviation(label("by-p", "A"), 12.8, 25), 1e-9);
    assertEquals(BY_SCIPY, deviation(label("by-p", "B"), 9, 22), 1e-9);
    assertEquals(List.of("converted-from-p-value"), codes(ask(Conversions.ALL), "by-p"));
  }

  /** 3.8 over 2.78 over root(1/25 + 1/22). */
  @Test
  void aPrintedStatisticGoesBeforeItsPValueInEitherDirection() {
    assertEquals(4.675964620013118, deviation(label("by-t", "B"), 9, 22), 1e-9);
    assertEquals(List.of("converted-from-t-statistic"), codes(ask(Conversions.ALL), "by-t"));
  }

  @Test
  void aPrintedDeviationStays() {
    assertEquals(3, deviation(label("printed", "A"), 12.8, 25), 1e-9);
    assertEquals(List.of(), codes(ask(Conversions.ALL), "printed"));
  }

  @Test
  void theRowIsMarkedAndOneClickAwayFromBeingLeftOut() {
    Answer answer = ask(Conversions.ALL);
    Forest forest =
        AnswerForest.of(answer, answer.result().orElseThrow(), Edition.ofProgram("test"));
    List<ForestRow> marked =
        forest.blocks().stream()
            .flatMap(block -> block.rows().stream())
            .filter(row -> row.detail().contains("SD from a test against another group"))
            .toList();
    assertEquals(4, marked.size());
    Answer printed = ask(Conversions.NONE);
    assertEquals(
        2,
        SynthesisResult.of(printed.result().orElseThrow()).studies().stream()
            .filter(row -> row.variance().isPresent())
            .count());
  }

  @Test
  void whereNeitherIsTestedNoneIsMadeUp() {
    assertTrue(
        SynthesisResult.of(ask(Conversions.ALL).result().orElseThrow()).studies().stream()
            .filter(row -> row.studyId().equals(Optional.of("silent")))
            .allMatch(row -> row.variance().isEmpty()));
  }
}
