package gapwise.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import gapwise.evidence.EventCount;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.Provenance;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.unit.Duration;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.Reason.PassedOver.For;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Reasons keep their values, and are worded when somebody asks. */
class ReasonTest {
  private static OutcomeReport.Builder report() {
    return OutcomeReport.with(
        new Scope.OneArm("A"), Outcome.of("union"), new ReportedValue.Events(EventCount.of(9, 12)));
  }

  private static String passedOver(OutcomeReport.Builder report) {
    return new Reason.PassedOver(report.build(), For.LATER).sentence();
  }

  @Test
  void aReportIsToldApartByItsTimeItsClockAndItsPlace() {
    String rest = " was passed over for a later one of the same arm.";
    Duration year = Duration.ofMonths(12);
    Provenance table = new Provenance(Optional.of("table 2"), Optional.empty());
    assertEquals("The value" + rest, passedOver(report()));
    assertEquals("The value at 12 months" + rest, passedOver(report().timePoint(year)));
    assertEquals("The value counted from injury" + rest, passedOver(report().clock(Clock.INJURY)));
    assertEquals(
        "The value at 12 months counted from injury (table 2)" + rest,
        passedOver(report().timePoint(year).clock(Clock.INJURY).provenance(table)));
  }

  @Test
  void theListOfPatientsIsNamedWhereThereIsNoReport() {
    assertEquals(
        "The list of patients described one by one does not say from when it is counted; such"
            + " values stand with those that count from docking, as most do that say.",
        new Incomparable.ClockNotStated(Optional.empty(), Optional.of(Clock.DOCKING)).sentence());
    assertEquals(
        "The list of patients described one by one does not say from when it is counted, and such"
            + " values are taken off.",
        new Incomparable.ClockNotStated(Optional.empty(), Optional.empty()).sentence());
    assertEquals(
        "The list of patients described one by one does not say its currency; those that are taken"
            + " are in EUR.",
        new Incomparable.OtherCurrency(Optional.empty(), Optional.empty(), "EUR").sentence());
  }

  @Test
  void aPrintedPercentageIsToldAsItIsPrinted() {
    assertEquals(
        "33.3 % of 1,200 is printed, which no whole number or more than one gives.",
        new Reason.PercentageOf(33.3, 1200).sentence());
  }

  @Test
  void onePatientAskedForIsToldInTheSingular() {
    assertEquals(
        "It speaks of 0; at least 1 is asked for.", new Reason.TooFewPatients(0, 1).sentence());
    assertEquals(
        "It speaks of 4; at least 5 are asked for.", new Reason.TooFewPatients(4, 5).sentence());
  }

  @ParameterizedTest
  @EnumSource(Reason.Plain.class)
  void everyReasonWithoutValuesHasACodeAndASentence(Reason.Plain reason) {
    assertFalse(reason.code().isBlank());
    assertEquals('.', reason.sentence().charAt(reason.sentence().length() - 1));
  }

  @ParameterizedTest
  @EnumSource(For.class)
  void whatAReportGaveWayToIsSaidOfIt(For better) {
    Reason reason = new Reason.PassedOver(report().build(), better);
    assertFalse(reason.code().isBlank());
    assertEquals("The value ", reason.sentence().substring(0, 10));
  }

  @Test
  void somethingLeftOutSaysItsReason() {
    Reason reason = new Reason.ValueOfAllArms(3);
    LeftOut leftOut = new LeftOut("s", "A", "Somebody 2001", reason);
    assertEquals("value-for-all-arms", leftOut.code());
    assertEquals("The paper gives one value for all its 3 groups together.", leftOut.message());
  }
}
