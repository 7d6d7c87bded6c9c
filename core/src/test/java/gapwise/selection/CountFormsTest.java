package gapwise.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.QuantitySummaryBuilder;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.problem.Problem;
import gapwise.search.SearchRequest;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Complications, of which one patient can have several. All studies are invented. */
class CountFormsTest {
  private static final Outcome COMPLICATIONS = Outcome.of("complications");

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

  @Test
  void moreSeriesWithEventsAmongPatientsLeaveMeansOutWithAReasonAndACount() {
    home.keep(
        study("a", tally(15, 28)),
        study("b", tally(9, 20)),
        study("c", mean(QuantitySummary.with(Unit.PER_PATIENT).n(20).mean(0.7), 0.9)));
    Selection selection = select(Optional.empty());
    assertEquals(List.of("a", "b"), studies(selection));
    assertEquals(Optional.of(CountedAs.EVENTS), selection.countedAs());
    assertEquals("counted-otherwise", selection.leftOut().get(0).code());
    assertTrue(
        selection.leftOut().get(0).message().contains("is a mean for each patient"),
        selection.leftOut()::toString);
    assertTrue(
        note(selection, "counted-two-ways")
            .startsWith("2 series give a sum of events among patients, 1 gives a mean"),
        selection.notes()::toString);
    assertTrue(note(selection, "rate-for-each-patient").contains("no share of patients"));
  }

  @Test
  void moreSeriesWithMeansLeaveSumsOut() {
    home.keep(
        study("a", tally(15, 28)),
        study("b", mean(QuantitySummary.with(Unit.PER_PATIENT).n(20).mean(0.5), 0.8)),
        study("c", mean(QuantitySummary.with(Unit.PER_PATIENT).n(20).mean(0.7), 0.9)));
    Selection selection = select(Optional.empty());
    assertEquals(List.of("b", "c"), studies(selection));
    assertEquals(Optional.of(CountedAs.MEANS), selection.countedAs());
    assertTrue(
        note(selection, "counted-two-ways").startsWith("2 series give a mean for each patient"));
  }

  @Test
  void aMeanWithoutASpreadCannotBePooledAndDoesNotOutnumberASum() {
    home.keep(
        study("a", tally(15, 28)),
        study("b", quantity(QuantitySummary.with(Unit.PER_PATIENT).n(20).mean(0.5))),
        study("c", quantity(QuantitySummary.with(Unit.PER_PATIENT).n(20).mean(0.7))));
    Selection selection = select(Optional.empty());
    assertEquals(List.of("a"), studies(selection));
    assertTrue(note(selection, "counted-two-ways").contains("2 give a mean for each patient"));
  }

  @Test
  void theOtherFormCanBeAskedFor() {
    home.keep(
        study("a", tally(15, 28)),
        study("b", tally(9, 20)),
        study("c", mean(QuantitySummary.with(Unit.PER_PATIENT).n(20).mean(0.7), 0.9)));
    Selection selection = select(Optional.of(CountedAs.MEANS));
    assertEquals(List.of("c"), studies(selection));
    assertEquals(
        List.of("counted-otherwise", "counted-otherwise"),
        selection.leftOut().stream().map(LeftOut::code).toList());
  }

  @Test
  void patientsDescribedOneByOneJoinWhicheverFormIsTaken() {
    home.keep(study("a", tally(15, 28)), patients("b", 2, 0, 1, 0, 0, 3));
    Selection events = select(Optional.empty());
    assertEquals(List.of("a", "b"), studies(events));
    assertEquals(new ReportedValue.Tally(6, OptionalInt.of(6)), events.rows().get(1).value());
    Selection means = select(Optional.of(CountedAs.MEANS));
    assertTrue(means.rows().get(0).value() instanceof ReportedValue.Quantity);
  }

  @Test
  void eventsOverTimeAndPercentagesAreNoCountForEachPatient() {
    home.keep(
        study("a", tally(15, 28)),
        study("b", report(new ReportedValue.Rate(7, 31, Unit.YEARS))),
        study(
            "c",
            report(
                new ReportedValue.Events(
                    new EventCount(
                        OptionalInt.empty(), OptionalInt.of(20), OptionalDouble.of(35), false)))),
        study("d", report(new ReportedValue.Events(EventCount.of(4, 12)))));
    Selection selection = select(Optional.empty());
    assertEquals(List.of("a", "d"), studies(selection));
    assertEquals(
        List.of("events-over-time", "form-does-not-fit"),
        selection.leftOut().stream().map(LeftOut::code).toList());
  }

  @Test
  void aSumThatDoesNotSayAmongHowManySpeaksOfTheArm() {
    home.keep(study("a", report(new ReportedValue.Tally(15, OptionalInt.empty()))));
    assertEquals(OptionalInt.of(30), select(Optional.empty()).rows().get(0).speaksOf());
  }

  /** Of two values at the same time the one with a spread is taken, though of fewer patients. */
  @Test
  void aMeanWithASpreadGoesBeforeABareMeanOfMorePatients() {
    home.keep(
        study(
            "a",
            quantity(QuantitySummary.with(Unit.PER_PATIENT).n(30).mean(0.6)),
            mean(QuantitySummary.with(Unit.PER_PATIENT).n(28).mean(0.7), 0.9)));
    assertEquals(OptionalInt.of(28), select(Optional.empty()).rows().get(0).speaksOf());
  }

  private Selection select(Optional<CountedAs> form) {
    return home.selector()
        .select(Question.about(COMPLICATIONS, SearchRequest.EVERYTHING).withCountedAs(form));
  }

  private static List<String> studies(Selection selection) {
    return selection.rows().stream().map(row -> row.study().id()).toList();
  }

  private static String note(Selection selection, String code) {
    return selection.notes().stream()
        .filter(note -> note.code().equals(code))
        .map(Problem::message)
        .findFirst()
        .orElse("");
  }

  private static OutcomeReport report(ReportedValue value) {
    return OutcomeReport.with(new Scope.OneArm("A"), COMPLICATIONS, value).build();
  }

  private static OutcomeReport tally(int events, int among) {
    return report(new ReportedValue.Tally(events, OptionalInt.of(among)));
  }

  private static OutcomeReport quantity(QuantitySummaryBuilder summary) {
    return report(new ReportedValue.Quantity(summary.build()));
  }

  private static OutcomeReport mean(QuantitySummaryBuilder summary, double deviation) {
    return quantity(summary.standardDeviation(deviation));
  }

  private static Study study(String id, OutcomeReport... reports) {
    return Study.with(id, Citation.with("Invented " + id).firstAuthor(id).year(2012).build())
        .invented(true)
        .arms(
            List.of(
                Arm.with("A", MethodUsed.of(Method.of("bone-transport")))
                    .baseline(Baseline.with().patients(30).build())
                    .build()))
        .outcomes(List.of(reports))
        .build();
  }

  private static Study patients(String id, int... complications) {
    List<PatientRow> rows =
        IntStream.range(0, complications.length)
            .mapToObj(
                i -> {
                  TreeMap<String, PatientOutcome> outcomes = new TreeMap<>();
                  outcomes.put(
                      "complications",
                      new PatientOutcome.Measured(complications[i], Unit.PER_PATIENT));
                  return PatientRow.with("case " + i, "A").outcomes(outcomes).build();
                })
            .toList();
    return study(id).but().patients(rows).build();
  }
}
