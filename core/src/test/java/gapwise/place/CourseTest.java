package gapwise.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Phase;
import gapwise.problem.WrongInputException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Courses of our own invention; sums by hand, a month being 30.44 days and a week 7. */
class CourseTest {
  private static Stay weeks(Phase phase, double weeks) {
    return new Stay(phase, new Duration(weeks, Unit.WEEKS));
  }

  private static Stay months(Phase phase, double months) {
    return new Stay(phase, Duration.ofMonths(months));
  }

  /** Eight weeks framed before the operation, then 12, 10 and 6 weeks, then half a year. */
  private static final Course PHASES =
      new Course(
          Optional.of(Clock.INJURY),
          List.of(
              weeks(Phase.TEMPORARY_FRAME, 8),
              weeks(Phase.NO_WEIGHT_BEARING, 12),
              weeks(Phase.PARTIAL_WEIGHT_BEARING, 10),
              weeks(Phase.FULL_IN_SUPPORT, 6),
              months(Phase.UNSUPPORTED, 6)));

  private static double reached(Course course, Milestone milestone, Clock clock) {
    return course.reached().stream()
        .filter(one -> one.milestone() == milestone && one.clock().equals(Optional.of(clock)))
        .findFirst()
        .orElseThrow(() -> new AssertionError(milestone + " on " + clock + " in " + course))
        .value();
  }

  @Test
  void thePhasesAddUpWhateverTheirUnits() {
    // 36 weeks are 252 days, 252/30.44 = 8.27858 months, and six months more
    assertEquals(14.27858, PHASES.totalMonths(), 1e-5);
  }

  @Test
  void eachMilestoneStandsOnEveryClockThatStartsBeforeIt() {
    // 30 weeks from injury and 22 from the operation until full weight in the boot
    assertEquals(210 / 30.44, reached(PHASES, Milestone.IN_SUPPORT, Clock.INJURY), 1e-9);
    assertEquals(
        154 / 30.44, reached(PHASES, Milestone.IN_SUPPORT, Clock.DEFINITIVE_OPERATION), 1e-9);
    assertEquals(84 / 30.44, reached(PHASES, Milestone.PARTIAL, Clock.DEFINITIVE_OPERATION), 1e-9);
    assertEquals(252 / 30.44, reached(PHASES, Milestone.UNSUPPORTED, Clock.INJURY), 1e-9);
  }

  @Test
  void aTemporaryFrameIsNoTimeInTheFrameOfTheReconstruction() {
    assertTrue(PHASES.reached().stream().noneMatch(r -> r.milestone() == Milestone.FRAME_OFF));
    assertFalse(PHASES.origins().containsKey(Clock.FRAME_ON));
  }

  @Test
  void monthsInTheFrameAreSummedOverItsPhasesAndTheClockOfItsRemovalStartsThen() {
    Course course =
        new Course(
            Optional.empty(),
            List.of(
                weeks(Phase.TEMPORARY_FRAME, 4),
                weeks(Phase.LATENCY, 1),
                months(Phase.DISTRACTION, 3),
                months(Phase.CONSOLIDATION, 8),
                months(Phase.FULL_IN_SUPPORT, 2),
                months(Phase.UNSUPPORTED, 3)));
    assertEquals(11 + 7 / 30.44, reached(course, Milestone.FRAME_OFF, Clock.FRAME_ON), 1e-9);
    assertEquals(2, reached(course, Milestone.UNSUPPORTED, Clock.FRAME_REMOVAL), 1e-9);
    assertEquals(5, reached(course, Milestone.END, Clock.FRAME_REMOVAL), 1e-9);
    assertFalse(course.origins().containsKey(Clock.INJURY));
  }

  @Test
  void withTwoStagesATemporaryFrameEndsAtTheFirstAndGraftingEndsTheWait() {
    Course course =
        new Course(
            Optional.of(Clock.INJURY),
            List.of(
                weeks(Phase.TEMPORARY_FRAME, 2),
                weeks(Phase.BETWEEN_STAGES, 8),
                months(Phase.NO_WEIGHT_BEARING, 3),
                months(Phase.PARTIAL_WEIGHT_BEARING, 2)));
    assertEquals(
        Map.of(
            Clock.INJURY, 0.0,
            Clock.FIRST_STAGE, 14 / 30.44,
            Clock.GRAFTING, 70 / 30.44),
        rounded(course.origins()));
    assertEquals(3, reached(course, Milestone.PARTIAL, Clock.GRAFTING), 1e-9);
  }

  private static Map<Clock, Double> rounded(Map<Clock, Double> origins) {
    Map<Clock, Double> exact =
        Map.of(Clock.FIRST_STAGE, 14 / 30.44, Clock.GRAFTING, 70 / 30.44, Clock.INJURY, 0.0);
    origins.forEach((clock, months) -> assertEquals(exact.get(clock), months, 1e-9));
    return origins.keySet().equals(exact.keySet()) ? exact : origins;
  }

  /** Common practice, no source: a frame of 12 to 18 months for severe loss of foot and ankle. */
  @Test
  void aFrameOfAYearAndAHalfIsTakenAndCountsAsMonthsInItOnly() {
    for (double inFrame : new double[] {12, 18}) {
      Course course =
          new Course(
              Optional.empty(),
              List.of(months(Phase.IN_FRAME, inFrame), months(Phase.FULL_IN_SUPPORT, 3)));
      assertEquals(inFrame, reached(course, Milestone.FRAME_OFF, Clock.FRAME_ON), 1e-9);
      assertEquals(inFrame + 3, course.totalMonths(), 1e-9);
    }
  }

  /** Common practice, no source: some 18 months to normal function after graft and frame. */
  @Test
  void eighteenMonthsToNormalFunctionAfterAGraftInAFrameStandOnTheClockOfTheGraft() {
    Course course =
        new Course(
            Optional.of(Clock.GRAFTING),
            List.of(
                months(Phase.IN_FRAME, 10),
                months(Phase.PARTIAL_WEIGHT_BEARING, 3),
                months(Phase.FULL_IN_SUPPORT, 5),
                weeks(Phase.UNSUPPORTED, 4)));
    assertEquals(18, reached(course, Milestone.UNSUPPORTED, Clock.GRAFTING), 1e-9);
    assertEquals(8, reached(course, Milestone.UNSUPPORTED, Clock.FRAME_REMOVAL), 1e-9);
  }

  @Test
  void aCourseThatContradictsItselfIsRefusedInWords() {
    refused("clock-starts-twice", Clock.GRAFTING, months(Phase.BETWEEN_STAGES, 2));
    refused("temporary-frame", Clock.FRAME_ON, months(Phase.TEMPORARY_FRAME, 2));
    refused(
        "frame-on-twice",
        Clock.INJURY,
        months(Phase.IN_FRAME, 2),
        months(Phase.NO_WEIGHT_BEARING, 1),
        months(Phase.IN_FRAME, 2));
  }

  private static void refused(String code, Clock start, Stay... stays) {
    WrongInputException wrong =
        assertThrows(
            WrongInputException.class, () -> new Course(Optional.of(start), List.of(stays)));
    assertEquals(code, wrong.problems().get(0).code());
  }
}
