package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.analysis.result.Result;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
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
import gapwise.figure.bubble.Bubble;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Shares over the length of missing bone, counts as they are. All series are invented. */
class CountsByLengthTest {
  private static final String OVERLAPPING = "bone-transport";
  private static final String APART = "induced-membrane";

  @TempDir private static Path home;
  private static InventedBase base;
  private static Answers answers;

  @BeforeAll
  static void open() {
    List<Study> studies = new ArrayList<>();
    int[] united = {12, 10, 9, 11, 7, 8, 6};
    for (int i = 0; i < united.length; i++) {
      studies.add(study("a" + i, OVERLAPPING, united[i], 12, 3 + i));
    }
    int[] all = {9, 11, 8, 0, 0, 0};
    for (int i = 0; i < all.length; i++) {
      studies.add(study("b" + i, APART, all[i], all[i] > 0 ? all[i] : 10, 3 + 2 * i));
    }
    base = InventedBase.of(home, studies);
    answers = base.answers();
  }

  @AfterAll
  static void close() {
    base.close();
  }

  private static Study study(String id, String method, int events, int total, double length) {
    Baseline baseline =
        Baseline.with()
            .patients(total)
            .defect(DefectLength.of(QuantitySummary.with(Unit.CENTIMETRES).mean(length).build()))
            .build();
    return Study.with(id, Citation.with("Invented series " + id).firstAuthor(id).year(2020).build())
        .invented(true)
        .arms(List.of(Arm.with("A", MethodUsed.of(Method.of(method))).baseline(baseline).build()))
        .outcomes(
            List.of(
                OutcomeReport.with(
                        new Scope.OneArm("A"),
                        Outcome.of("union"),
                        new ReportedValue.Events(EventCount.of(events, total)))
                    .build()))
        .build();
  }

  private static LengthAnswer byLength(String method) {
    return answers.byLength(
        Question.about(Outcome.of("union"), SearchRequest.EVERYTHING.withMethods(Set.of(method))),
        LengthShape.LINE);
  }

  private static String model(LengthAnswer answer) {
    return answer.answer().plan().orElseThrow().get("model").asText();
  }

  @Test
  void noHalfEventIsAddedForALineThroughCounts() {
    LengthAnswer answer = byLength(OVERLAPPING);
    Result result = answer.answer().result().orElseThrow();
    Bubble figure = answer.figure(Edition.ofProgram("test")).orElseThrow();

    assertEquals("exact-likelihood", model(answer));
    assertEquals(Optional.of(LengthShape.LINE), answer.drawn());
    assertEquals(List.of(), answer.notes());
    assertTrue(
        result.warnings().stream().noneMatch(one -> one.code().equals("zero-cells-corrected")));
    assertFalse(figure.curve().isEmpty());
    assertTrue(
        figure.curve().get(0).value() > figure.curve().get(figure.curve().size() - 1).value());
    assertTrue(figure.provenance().model().contains("profile likelihood"));
  }

  @Test
  void whereCountsByThemselvesHaveNoBestLineHalfEventsAreAddedAndThatIsSaid() {
    LengthAnswer answer = byLength(APART);

    assertEquals("random-effects", model(answer));
    assertEquals(Optional.of(LengthShape.LINE), answer.drawn());
    assertTrue(
        answer.notes().stream().anyMatch(note -> note.contains("half an event was added")),
        answer.notes()::toString);
    assertFalse(answer.figure(Edition.ofProgram("test")).orElseThrow().curve().isEmpty());
  }
}
