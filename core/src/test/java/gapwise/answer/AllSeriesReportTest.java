package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.QuantitySummaryBuilder;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.UnstatedSpread;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.ForestRow;
import gapwise.search.SearchRequest;
import gapwise.selection.Conversions;
import gapwise.selection.Question;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Means without a standard deviation get one where their range or quartiles allow it, and never
 * vanish where they do not. All series are invented.
 */
class AllSeriesReportTest {
  private static final Outcome FRAME = Outcome.of("external-fixation-time");

  @TempDir private static Path home;
  private static InventedBase base;
  private static Answers answers;

  @BeforeAll
  static void open() {
    List<Study> studies =
        List.of(
            study("a", months(20).mean(8).standardDeviation(2)),
            study("b", months(25).mean(10).minimum(4).maximum(19)),
            study("c", months(25).mean(9).lowerQuartile(7).upperQuartile(12)),
            study("d", months(10).mean(12)),
            study("e", months(30).median(7).minimum(4).maximum(14)),
            study("f", QuantitySummary.with(Unit.MONTHS).mean(19.6).minimum(5).maximum(60)),
            study(
                "g",
                months(15).mean(4.1).unstatedSpread(new UnstatedSpread(2, OptionalDouble.empty()))),
            study("h", months(12).mean(6).minimum(6).maximum(6)));
    base = InventedBase.of(home, studies);
    answers = base.answers();
  }

  @AfterAll
  static void close() {
    base.close();
  }

  private static QuantitySummaryBuilder months(int n) {
    return QuantitySummary.with(Unit.MONTHS).n(n);
  }

  private static Study study(String id, QuantitySummaryBuilder months) {
    return Study.with(id, Citation.with("Invented " + id).firstAuthor(id).year(2018).build())
        .invented(true)
        .arms(
            List.of(
                Arm.with("A", MethodUsed.of(Method.of("bone-transport")))
                    .baseline(Baseline.with().patients(30).build())
                    .build()))
        .outcomes(
            List.of(
                OutcomeReport.with(
                        new Scope.OneArm("A"), FRAME, new ReportedValue.Quantity(months.build()))
                    .build()))
        .build();
  }

  private static Answer ask(Conversions conversions) {
    return answers.ask(
        Question.about(FRAME, SearchRequest.EVERYTHING).withConversions(conversions));
  }

  private static Result.Study row(Answer answer, String id) {
    return SynthesisResult.of(answer.result().orElseThrow()).studies().stream()
        .filter(study -> study.studyId().orElseThrow().equals(id))
        .findFirst()
        .orElseThrow();
  }

  private static List<String> codes(Answer answer, String id) {
    return answer.result().orElseThrow().warnings().stream()
        .filter(warning -> warning.studyId().filter(id::equals).isPresent())
        .map(Result.Warning::code)
        .toList();
  }

  /** Variance of the log of the mean: SD^2/(n mean^2), SD from spread_conversions.py. */
  @Test
  void aMeanWithARangeOrQuartilesGetsTheDeviationOfWan() {
    Answer answer = ask(Conversions.ALL);
    assertEquals(3.818316 * 3.818316 / (25 * 100), row(answer, "b").variance().orElseThrow(), 1e-7);
    assertEquals(3.930591 * 3.930591 / (25 * 81), row(answer, "c").variance().orElseThrow(), 1e-7);
    assertEquals(List.of("converted-from-range"), codes(answer, "b"));
    assertTrue(codes(answer, "c").contains("converted-from-quartiles"));
  }

  @Test
  void aRangeThatLiesToOneSideIsConvertedWithAWarning() {
    assertTrue(
        codes(ask(Conversions.ALL), "f")
            .containsAll(
                List.of("patients-of-the-arm-taken", "converted-from-range", "mean-looks-skewed")));
  }

  @Test
  void theMethodStandsInTheRowAndInTheFile() {
    Answer answer = ask(Conversions.ALL);
    Forest forest =
        AnswerForest.of(answer, answer.result().orElseThrow(), Edition.ofProgram("test"));
    List<String> marked =
        forest.blocks().get(0).rows().stream()
            .filter(row -> row.detail().contains("SD from"))
            .map(row -> row.study().substring(0, 1))
            .sorted()
            .toList();
    assertEquals(List.of("b", "c", "e", "f"), marked);
    assertTrue(forest.csv().contains("SD from the range"), forest::csv);
  }

  @Test
  void withoutConversionsOnlyPrintedDeviationsArePooled() {
    Answer answer = ask(Conversions.NONE);
    assertEquals("none", answer.plan().orElseThrow().at("/source/evidence/conversions").asText());
    List<String> pooled =
        SynthesisResult.of(answer.result().orElseThrow()).studies().stream()
            .filter(study -> study.weightPercent().isPresent())
            .map(study -> study.studyId().orElseThrow())
            .toList();
    assertEquals(List.of("a"), pooled);
    Forest forest =
        AnswerForest.of(answer, answer.result().orElseThrow(), Edition.ofProgram("test"));
    assertEquals(8, forest.blocks().get(0).rows().size(), "the others are drawn without interval");
    assertTrue(
        forest.blocks().get(0).rows().stream()
            .map(ForestRow::detail)
            .noneMatch(detail -> detail.contains("SD from")));
  }

  @Test
  void aMedianThatIsNotConvertedIsNamedWithItsReason() {
    assertTrue(codes(ask(Conversions.NONE), "e").contains("median-not-converted"));
    assertTrue(codes(ask(Conversions.ALL), "e").contains("converted-from-median"));
  }

  @Test
  void aSpreadOfUnknownKindIsNotUsedAndItsMeanStays() {
    Answer answer = ask(Conversions.ALL);
    assertTrue(row(answer, "g").variance().isEmpty());
    assertTrue(codes(answer, "g").contains("spread-not-stated"));
    assertTrue(answer.selection().leftOut().isEmpty(), answer.selection().leftOut()::toString);
  }

  @Test
  void aRangeWithoutWidthDoesNotMakeASeriesSureOfItself() {
    assertTrue(row(ask(Conversions.ALL), "h").variance().isEmpty());
  }

  /**
   * By hand: centres 4.1, 6, 7, 8, 9, 10, 12, 19.6; quartiles by position 1.75 and 5.25 from the
   * first are 6.75 and 10.5 (Hyndman and Fan, definition 7); weighted by 15, 12, 30, 20, 25, 25, 10
   * and 30 patients 1686.5/167.
   */
  @Test
  void whatAllSeriesReportStandsBesideThePooledValueInFigureAndFile() {
    Answer answer = ask(Conversions.ALL);
    Result result = answer.result().orElseThrow();
    String sentence =
        "7 series report means and 1 a median, from 4.1 to 19.6 months, half of them between 6.8 and"
            + " 10.5; weighted by patients 10.1. 3 of them are not in the average.";
    assertTrue(
        Blocks.told(answer, result).get(0).then().contains(sentence),
        Blocks.told(answer, result)::toString);
    Forest forest = AnswerForest.of(answer, result, Edition.ofProgram("test"));
    assertTrue(forest.notes().contains(sentence), forest.notes()::toString);
    assertTrue(forest.csv().lines().findFirst().orElseThrow().endsWith(",notes"));
    assertTrue(forest.csv().contains(sentence), forest::csv);
    JsonNode told = answer.outcome().orElseThrow().json().at("/data/reported/0");
    assertEquals("bone-transport", told.path("method").asText());
    assertEquals(8, told.path("series").asInt());
    assertEquals(1, told.path("medians").asInt());
    assertEquals(6.75, told.path("lowerQuartile").asDouble(), 1e-12);
    assertEquals(1686.5 / 167, told.path("weightedByPatients").asDouble(), 1e-9);
    assertEquals(1, answer.outcome().orElseThrow().json().at("/data/reported").size());
  }
}
