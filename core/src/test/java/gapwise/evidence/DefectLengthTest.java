package gapwise.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Unit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** What a reported length says of lengths that are asked for. */
class DefectLengthTest {
  private static final LengthRange THIRTY_TO_FORTY = new LengthRange(30, 40);

  private static DefectLength length(
      Optional<QuantitySummary> summary, OptionalDouble over, DefectLength.Band... bands) {
    return new DefectLength(
        summary,
        over,
        List.of(bands),
        Optional.of("as printed"),
        Optional.empty(),
        Optional.empty());
  }

  private static DefectLength over(double centimetres) {
    return length(Optional.empty(), OptionalDouble.of(centimetres));
  }

  private static DefectLength bands(DefectLength.Band... bands) {
    return length(Optional.empty(), OptionalDouble.empty(), bands);
  }

  private static DefectLength.Band band(double from, double to, int count) {
    return new DefectLength.Band(new LengthRange(from, to), count);
  }

  private static QuantitySummaryBuilder numbers() {
    return QuantitySummary.with(Unit.CENTIMETRES);
  }

  private static ArmDefect arm(DefectLength length, Double... patients) {
    return new ArmDefect(length, ArmDefect.Origin.REPORTED_FOR_ARM, List.of(patients));
  }

  @Test
  void aThresholdAloneHasOneEndAndReachesIntoNoRangeThatDoesNotHoldIt() {
    ArmDefect overFour = arm(over(4));
    assertEquals(Optional.empty(), overFour.length().closedRange());
    assertFalse(overFour.overlaps(THIRTY_TO_FORTY));
    assertTrue(overFour.leavesOpen(THIRTY_TO_FORTY));
    assertTrue(overFour.overlaps(LengthRange.from(4)));
    assertFalse(overFour.leavesOpen(LengthRange.from(4)));
    assertFalse(overFour.overlaps(LengthRange.from(5)));
    assertTrue(overFour.leavesOpen(LengthRange.from(5)));
    // nobody over 4 cm has 3 to 4 cm
    assertFalse(overFour.overlaps(new LengthRange(3, 4)));
    assertFalse(overFour.leavesOpen(new LengthRange(3, 4)));
  }

  @Test
  void aThresholdBesideAStretchWithBothEndsIsJudgedByTheStretch() {
    DefectLength both =
        length(Optional.of(numbers().mean(7).minimum(5).maximum(9).build()), OptionalDouble.of(4));
    assertEquals(Optional.of(new LengthRange(5, 9)), both.closedRange());
    assertEquals(Optional.empty(), both.oneSidedRange());
    assertFalse(arm(both).overlaps(THIRTY_TO_FORTY));
    assertFalse(arm(both).leavesOpen(THIRTY_TO_FORTY));
    assertTrue(arm(both).overlaps(new LengthRange(8, 12)));
  }

  @Test
  void aBandOpenAboveCountsApartFromTheBandsThatHaveBothEnds() {
    DefectLength bands = bands(band(4, 6, 3), band(6, Double.POSITIVE_INFINITY, 5));
    assertEquals(Optional.of(new LengthRange(4, 6)), bands.closedRange());
    assertEquals(Optional.of(LengthRange.from(6)), bands.oneSidedRange());
    assertTrue(arm(bands).overlaps(new LengthRange(5, 5.5)));
    assertFalse(arm(bands).overlaps(THIRTY_TO_FORTY));
    assertTrue(arm(bands).leavesOpen(THIRTY_TO_FORTY));
    assertFalse(arm(bands).leavesOpen(new LengthRange(1, 2)));
  }

  @Test
  void anEmptyBandOpenAboveSaysNothing() {
    DefectLength bands = bands(band(4, 6, 3), band(6, Double.POSITIVE_INFINITY, 0));
    assertEquals(Optional.empty(), bands.oneSidedRange());
    assertFalse(arm(bands).leavesOpen(THIRTY_TO_FORTY));
  }

  @Test
  void bandsWithBothEndsReachToTheMeanPrintedBesideThem() {
    DefectLength bands =
        length(
            Optional.of(numbers().mean(7).build()),
            OptionalDouble.empty(),
            band(4, 6, 3),
            band(6, Double.POSITIVE_INFINITY, 5));
    assertEquals(Optional.of(new LengthRange(4, 7)), bands.closedRange());
  }

  @Test
  void aShortestOrALongestLengthAloneHasOneEnd() {
    ArmDefect from = arm(DefectLength.of(numbers().minimum(4).build()));
    ArmDefect upTo = arm(DefectLength.of(numbers().maximum(6).build()));
    assertEquals(Optional.of(LengthRange.from(4)), from.length().oneSidedRange());
    assertEquals(Optional.of(new LengthRange(0, 6)), upTo.length().oneSidedRange());
    assertTrue(from.leavesOpen(THIRTY_TO_FORTY));
    assertFalse(upTo.leavesOpen(THIRTY_TO_FORTY));
    assertTrue(upTo.leavesOpen(new LengthRange(5, 8)));
    assertTrue(upTo.overlaps(new LengthRange(0, 8)));
  }

  @Test
  void wordsAloneLeaveEveryRangeOpen() {
    ArmDefect words = arm(length(Optional.empty(), OptionalDouble.empty()));
    assertFalse(words.overlaps(THIRTY_TO_FORTY));
    assertTrue(words.leavesOpen(THIRTY_TO_FORTY));
  }

  @Test
  void patientsDescribedOneByOneTellWhatAThresholdDoesNot() {
    ArmDefect described = arm(over(4), 5.0, 8.0, 31.0);
    assertTrue(described.overlaps(THIRTY_TO_FORTY));
    assertFalse(described.leavesOpen(THIRTY_TO_FORTY));
    assertFalse(described.wholeOverlaps(THIRTY_TO_FORTY));
    assertTrue(described.leavesOpen(new LengthRange(50, 60)));
  }

  @Test
  void anArmIsCountedByItsPatientsWhereEachHasALengthOrNothingElseIsKnown() {
    DefectLength range = DefectLength.of(numbers().minimum(2).maximum(9).build());
    assertEquals(List.of(2.0, 9.0), arm(range, 2.0, 9.0).countedByPatients(OptionalInt.of(2)));
    assertEquals(List.of(), arm(range, 2.0, 9.0).countedByPatients(OptionalInt.of(3)));
    assertEquals(List.of(), arm(range, 2.0, 9.0).countedByPatients(OptionalInt.empty()));
    assertEquals(List.of(5.0), arm(over(4), 5.0).countedByPatients(OptionalInt.of(3)));
  }
}
