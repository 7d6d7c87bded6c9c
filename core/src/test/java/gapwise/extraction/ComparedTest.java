package gapwise.extraction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.extraction.FieldChoice.Taken;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Two invented extractions side by side. */
class ComparedTest {
  private static Compared compared(Invented first, Invented second, SameRow... said) {
    return Compared.of(first.by(Invented.AB), second.by(Invented.CD), List.of(said));
  }

  private static List<String> keys(Compared compared) {
    return compared.differences().stream().map(Difference::key).toList();
  }

  private static Invented twoGroups(String a, String b) {
    return new Invented()
        .row("arms", "arm_id", "A", "method", a, "patients", "12")
        .row("arms", "arm_id", "B", "method", b, "patients", "9");
  }

  private static FieldChoice choice(Compared compared, String key, Taken taken, String third) {
    Difference one = compared.difference(key).orElseThrow();
    return FieldChoice.of(
        Invented.STUDY, one, taken, third, "looked up", Invented.EF, Invented.NOW);
  }

  private static List<ReadRow> agreed(Compared compared, FieldChoice... choices) {
    Map<String, FieldChoice> byKey = new TreeMap<>();
    for (FieldChoice one : choices) {
      byKey.put(one.difference(), one);
    }
    return AgreedRows.of(compared, byKey, true);
  }

  private static List<String> texts(List<ReadRow> rows, String sheet, String column) {
    return rows.stream()
        .filter(row -> row.sheet().equals(sheet))
        .map(row -> row.text(column))
        .toList();
  }

  @Test
  void groupsNamedTheOtherWayRoundAreMatchedByTheirMethod() {
    Invented first = twoGroups("autograft", "bone-transport");
    first.row("outcomes", "arm_id", "A", "outcome", "union", "events", "9", "total", "12");
    Invented second =
        new Invented()
            .row("arms", "arm_id", "A", "method", "bone-transport", "patients", "8")
            .row("arms", "arm_id", "B", "method", "autograft", "patients", "12");
    second.row("outcomes", "arm_id", "B", "outcome", "union", "events", "9", "total", "12");
    Compared both = compared(first, second);
    assertEquals(List.of("arms.2-1.patients"), keys(both));
    List<ReadRow> rows = agreed(both, choice(both, "arms.2-1.patients", Taken.SECOND, ""));
    assertEquals(List.of("12", "8"), texts(rows, "arms", "patients"));
    assertEquals(List.of("A"), texts(rows, "outcomes", "arm_id"));
  }

  @Test
  void numbersWhoseUnitsDifferAreTakenFromOnePerson() {
    Invented first =
        new Invented()
            .row(
                "arms",
                "arm_id",
                "A",
                "method",
                "autograft",
                "defect_length_mean",
                "5.2",
                "defect_length_unit",
                "cm");
    Invented second =
        new Invented()
            .row(
                "arms",
                "arm_id",
                "A",
                "method",
                "autograft",
                "defect_length_mean",
                "52",
                "defect_length_unit",
                "mm");
    Compared both = compared(first, second);
    Difference mean = both.difference("arms.1-1.defect_length_mean").orElseThrow();
    assertEquals(
        List.of("arms.1-1.defect_length_mean", "arms.1-1.defect_length_unit"),
        both.together(mean).stream().map(Difference::key).sorted().toList());
  }

  @Test
  void aRowOfOnePersonAloneIsKeptOrLeftOutAndWhatHangsOnItsGroupGoesWithIt() {
    Invented first = twoGroups("autograft", "bone-transport");
    first.row("outcomes", "arm_id", "B", "outcome", "union", "events", "4", "total", "9");
    Invented second =
        new Invented().row("arms", "arm_id", "A", "method", "autograft", "patients", "12");
    Compared both = compared(first, second);
    assertEquals(List.of("arms.2-"), keys(both));
    assertThrows(IllegalStateException.class, () -> agreed(both));
    List<ReadRow> kept = agreed(both, choice(both, "arms.2-", Taken.FIRST, ""));
    assertEquals(List.of("4"), texts(kept, "outcomes", "events"));
    List<ReadRow> left = agreed(both, choice(both, "arms.2-", Taken.SECOND, ""));
    assertEquals(List.of("A"), texts(left, "arms", "arm_id"));
    assertEquals(List.of(), texts(left, "outcomes", "events"));
  }

  @Test
  void aPersonSaysThatTwoRowsAreOneOrAreNot() {
    Invented first = new Invented().row("arms", "arm_id", "A", "method", "autograft");
    first.row("outcomes", "arm_id", "A", "outcome", "union", "events", "9", "total", "12");
    Invented second = new Invented().row("arms", "arm_id", "A", "method", "autograft");
    second.row("outcomes", "arm_id", "A", "outcome", "primary-union", "events", "9", "total", "12");
    assertEquals(List.of("outcomes.1-", "outcomes.-1"), keys(compared(first, second)));
    SameRow same = new SameRow(Invented.STUDY, "outcomes", 1, 1, true, Invented.EF, Invented.NOW);
    assertEquals(List.of("outcomes.1-1.outcome"), keys(compared(first, second, same)));
    SameRow apart = new SameRow(Invented.STUDY, "arms", 1, 1, false, Invented.EF, Invented.NOW);
    assertTrue(keys(compared(first, second, apart)).contains("arms.1-"));
  }

  @Test
  void patientsAreMatchedByTheNumberInTheirName() {
    Invented first = new Invented().row("arms", "arm_id", "A", "method", "autograft");
    first.row("patients", "arm_id", "A", "patient", "case 7", "age", "31");
    Invented second = new Invented().row("arms", "arm_id", "A", "method", "autograft");
    second.row("patients", "arm_id", "A", "patient", "07", "age", "37");
    assertEquals(
        List.of("patients.1-1.patient", "patients.1-1.age"), keys(compared(first, second)));
  }

  @Test
  void theAgreedRecordOfAThirdValueHoldsIt() {
    Invented first =
        new Invented().row("arms", "arm_id", "A", "method", "autograft", "patients", "12");
    Invented second =
        new Invented().row("arms", "arm_id", "A", "method", "autograft", "patients", "13");
    Compared both = compared(first, second);
    assertEquals(
        List.of("11"),
        texts(
            agreed(both, choice(both, "arms.1-1.patients", Taken.THIRD, "11")),
            "arms",
            "patients"));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            FieldChoice.of(
                Invented.STUDY,
                both.difference("arms.1-1.patients").orElseThrow(),
                Taken.THIRD,
                "11",
                "",
                Invented.EF,
                Invented.NOW),
        "a third value has a reason");
  }

  @Test
  void bothExtractionsAreShownToNobodyBeforeTheSettlingHasBegun() {
    TwiceRead paper =
        TwiceRead.opened(
            Invented.STUDY,
            Optional.empty(),
            "",
            Invented.AB,
            Invented.CD,
            Optional.empty(),
            new TwiceRead.Opened(Invented.EF, Invented.NOW));
    Extraction one =
        new Invented().row("arms", "arm_id", "A", "method", "autograft").by(Invented.AB);
    assertThrows(
        IllegalArgumentException.class,
        () -> Reconciliation.of(paper, one, one, List.of(), List.of()));
    assertThrows(
        IllegalArgumentException.class,
        () -> paper.with(new TwiceRead.Settling(Invented.EF, 0, Invented.NOW)),
        "not before both have handed in");
  }
}
