package gapwise.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.Subgroup;
import gapwise.evidence.unit.Length;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.problem.Problem;
import gapwise.search.SearchRequest;
import gapwise.search.SearchRequest.DefectMatch;
import gapwise.selection.SelectedRow.Basis;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Groups that do not say whether they have the missing bone asked for answer for none. */
class LengthAskedTest {
  private static final Outcome UNION = Outcome.of("union");

  @TempDir Path folder;
  private Home home;

  @BeforeEach
  void open() {
    home = new Home(folder);
  }

  @AfterEach
  void close() {
    home.close();
  }

  private Selection ask(double from, double to, DefectMatch match) {
    SearchRequest among = SearchRequest.EVERYTHING.withDefect(new LengthRange(from, to), match);
    return home.selector().select(Question.about(UNION, among));
  }

  private Selection reaching(double from, double to) {
    return ask(from, to, DefectMatch.OVERLAP);
  }

  private static OutcomeReport.Builder union(int events, int total) {
    return OutcomeReport.with(
        new Scope.OneArm("A"), UNION, new ReportedValue.Events(EventCount.of(events, total)));
  }

  private static Study study(
      String id, Optional<DefectLength> defect, List<Double> patients, OutcomeReport... reports) {
    Baseline.Builder baseline = Baseline.with().patients(12);
    defect.ifPresent(baseline::defect);
    Arm arm =
        Arm.with("A", MethodUsed.of(Method.of("bone-transport")))
            .baseline(baseline.build())
            .build();
    List<PatientRow> rows = new ArrayList<>();
    for (double length : patients) {
      rows.add(
          PatientRow.with("case " + (rows.size() + 1), "A")
              .defect(new Length(length, Unit.CENTIMETRES, false))
              .outcomes(
                  new TreeMap<>(
                      Map.of(
                          "union",
                          new PatientOutcome.Happened(
                              rows.size() % 2 == 0 ? YesOrNo.YES : YesOrNo.NO))))
              .build());
    }
    return Study.with(id, Citation.with("Invented study " + id).build())
        .invented(true)
        .arms(List.of(arm))
        .outcomes(List.of(reports))
        .patients(rows)
        .build();
  }

  private static Optional<DefectLength> over(double centimetres) {
    return Optional.of(
        new DefectLength(
            Optional.empty(),
            OptionalDouble.of(centimetres),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty()));
  }

  private static Optional<DefectLength> range(double from, double to) {
    return Optional.of(
        DefectLength.of(QuantitySummary.with(Unit.CENTIMETRES).minimum(from).maximum(to).build()));
  }

  private static Study whole(String id, Optional<DefectLength> defect) {
    return study(id, defect, List.of(), union(9, 12).build());
  }

  private static List<String> ids(Selection selection) {
    return selection.rows().stream().map(row -> row.study().id()).toList();
  }

  private static List<String> leftOut(Selection selection) {
    return selection.leftOut().stream().map(one -> one.studyId() + " " + one.code()).toList();
  }

  @Test
  void aGroupThatSaysOnlyOverFourIsNoEvidenceForThirtyToForty() {
    home.keep(whole("a", over(4)), whole("b", range(28, 35)));
    Selection selection = reaching(30, 40);
    assertEquals(List.of("b"), ids(selection));
    assertEquals(List.of("a length-one-sided"), leftOut(selection));
    assertEquals(
        "It gives only one end of its missing bone, such as “over 4 cm”, which is no evidence for"
            + " the lengths asked for.",
        selection.leftOut().get(0).message());
  }

  @Test
  void aGroupThatGivesNoLengthIsLeftOutOfALengthQuestionWithAReasonOfItsOwn() {
    home.keep(whole("a", Optional.empty()), whole("b", range(28, 35)));
    Selection selection = reaching(30, 40);
    assertEquals(List.of("b"), ids(selection));
    assertEquals(List.of("a length-unknown"), leftOut(selection));
  }

  @Test
  void howManySayOneEndOrNothingIsNotedOnce() {
    home.keep(
        whole("a", over(4)),
        whole("b", over(5)),
        whole("c", Optional.empty()),
        whole("d", range(28, 35)));
    Problem note = reaching(30, 40).notes().get(0);
    assertEquals("length-not-said", note.code());
    assertEquals(
        "3 further groups report this outcome and do not say whether their missing bone lies in the"
            + " lengths asked for: 2 give only one end of it, such as “over 4 cm”, and 1 gives no"
            + " number. No value here counts them.",
        note.message());
  }

  @Test
  void whereNoLengthIsAskedForEveryGroupCounts() {
    home.keep(whole("a", over(4)), whole("b", Optional.empty()), whole("c", range(28, 35)));
    Selection selection = home.selector().select(Question.about(UNION, SearchRequest.EVERYTHING));
    assertEquals(List.of("a", "b", "c"), ids(selection));
    assertEquals(List.of(), selection.leftOut());
    assertEquals(List.of(), selection.notes());
  }

  @Test
  void aGroupOverSixAnswersForFiveAndMoreAndNotForSevenAndMore() {
    home.keep(whole("a", over(6)));
    assertEquals(List.of("a"), ids(reaching(5, Double.POSITIVE_INFINITY)));
    Selection longer = reaching(7, Double.POSITIVE_INFINITY);
    assertEquals(List.of(), ids(longer));
    assertEquals(List.of("a length-one-sided"), leftOut(longer));
  }

  @Test
  void aGroupOutsideTheLengthsAskedForIsNotSpokenOf() {
    home.keep(whole("a", over(6)), whole("b", range(8, 12)));
    Selection shorter = reaching(2, 4);
    assertEquals(List.of(), ids(shorter));
    assertEquals(List.of(), leftOut(shorter));
  }

  @Test
  void thePatientsInTheLengthsCountThoughTheirGroupGivesOneEndAlone() {
    home.keep(
        study("a", over(4), List.of(5.0, 31.0, 32.0, 33.0, 34.0, 35.0, 6.0), union(9, 12).build()));
    Selection selection = reaching(30, 40);
    SelectedRow row = selection.rows().get(0);
    assertEquals(Basis.FROM_PATIENTS_IN_RANGE, row.basis());
    assertEquals(OptionalInt.of(5), row.speaksOf());
    assertEquals(List.of(), leftOut(selection));
    assertEquals("only-patients-in-range", selection.notes().get(0).code());
  }

  @Test
  void aPartReportedInTheLengthsCountsThoughItsGroupGivesNoLength() {
    Subgroup part =
        new Subgroup("defects of 5 to 8 cm", OptionalDouble.of(5), OptionalDouble.of(8));
    home.keep(
        study(
            "a",
            Optional.empty(),
            List.of(),
            union(9, 12).build(),
            union(5, 7).subgroup(part).build()));
    Selection selection = reaching(4, 9);
    assertEquals(Basis.SUBGROUP, selection.rows().get(0).basis());
    assertEquals(OptionalInt.of(7), selection.rows().get(0).speaksOf());
    assertEquals(List.of(), leftOut(selection));
  }

  @Test
  void aGroupWithEveryPatientOutsideTheLengthsIsNotTakenForItsShortestToLongest() {
    List<Double> twelve = List.of(2.0, 2.0, 2.0, 2.0, 2.0, 2.0, 9.0, 9.0, 9.0, 9.0, 9.0, 9.0);
    home.keep(study("a", range(2, 9), twelve, union(9, 12).build()));
    Selection selection = reaching(4, 6);
    assertEquals(List.of(), ids(selection));
    assertEquals(List.of("a no-patients-in-range"), leftOut(selection));
  }

  @Test
  void whereTheMiddleIsAskedForGroupsThatGiveNoneAreLeftOutByWhatTheyLack() {
    QuantitySummary mean = QuantitySummary.with(Unit.CENTIMETRES).mean(5).build();
    home.keep(
        whole("a", over(3)),
        whole("b", Optional.empty()),
        whole("c", range(3, 9)),
        whole("d", Optional.of(DefectLength.of(mean))),
        whole("e", range(12, 20)));
    Selection selection = ask(4, 6, DefectMatch.CENTRE);
    assertEquals(List.of("d"), ids(selection));
    assertEquals(
        List.of("a length-one-sided", "b length-unknown", "c length-without-middle"),
        leftOut(selection));
  }

  @Test
  void groupsOfWhichItIsNotSaidAreNotPooledWhenTheyAreAskedForThemselves() {
    home.keep(whole("a", over(4)), whole("b", Optional.empty()));
    for (DefectMatch match : List.of(DefectMatch.ONE_SIDED, DefectMatch.UNKNOWN)) {
      Selection selection = ask(30, 40, match);
      assertEquals(List.of(), ids(selection));
      assertEquals(List.of("a length-one-sided", "b length-unknown"), leftOut(selection));
    }
  }
}
