package gapwise.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Infection at the start, whichever way a paper gives it; counts by hand. */
class ArmInfectionTest {
  private static ArmInfection of(Baseline.Builder baseline) {
    return of(baseline, Baseline.with());
  }

  private static ArmInfection of(Baseline.Builder baseline, Baseline.Builder all, String... more) {
    MethodUsed method = MethodUsed.of(Method.of("bone-transport"));
    List<Arm> others = Stream.of(more).map(id -> Arm.with(id, method).build()).toList();
    Arm arm = Arm.with("A", method).baseline(baseline.build()).build();
    Study study =
        Study.with("s", Citation.with("Invented").build())
            .arms(Stream.concat(Stream.of(arm), others.stream()).toList())
            .whole(all.build())
            .build();
    return ArmInfection.of(study, arm);
  }

  private static void assertInfected(
      ArmInfection found, YesOrNo answer, double share, Optional<EventCount> count) {
    assertEquals(Optional.of(answer), found.atStart());
    assertEquals(share, found.share().orElseThrow(), 1e-12);
    assertEquals(count, found.count());
  }

  private static EventCount events(int events) {
    return new EventCount(
        OptionalInt.of(events), OptionalInt.empty(), OptionalDouble.empty(), false);
  }

  @Test
  void allInfectedAHundredPercentAndCountsSayTheSame() {
    Optional<EventCount> all = Optional.of(EventCount.of(20, 20));
    assertInfected(
        of(Baseline.with().patients(20).infectedAnswer(YesOrNo.YES)), YesOrNo.YES, 1, all);
    assertInfected(
        of(Baseline.with().patients(20).infected(EventCount.ofPercent(100))), YesOrNo.YES, 1, all);
    assertInfected(
        of(Baseline.with().patients(20).infected(EventCount.of(20, 20))), YesOrNo.YES, 1, all);
    assertInfected(of(Baseline.with().patients(20).infected(events(20))), YesOrNo.YES, 1, all);
  }

  @Test
  void noneInfectedIsAShareOfNought() {
    assertInfected(
        of(Baseline.with().patients(20).infectedAnswer(YesOrNo.NO)),
        YesOrNo.NO,
        0,
        Optional.of(EventCount.of(0, 20)));
    assertInfected(of(Baseline.with().infectedAnswer(YesOrNo.NO)), YesOrNo.NO, 0, Optional.empty());
  }

  @Test
  void aNumberOrAPercentageAloneIsOfThePatientsTreated() {
    Optional<EventCount> five = Optional.of(EventCount.of(5, 20));
    assertInfected(of(Baseline.with().patients(20).infected(events(5))), YesOrNo.MIXED, 0.25, five);
    assertInfected(
        of(Baseline.with().patients(20).infected(EventCount.ofPercent(25))),
        YesOrNo.MIXED,
        0.25,
        five);
    assertInfected(
        of(Baseline.with().infected(EventCount.ofPercent(25))),
        YesOrNo.MIXED,
        0.25,
        Optional.empty());
  }

  @Test
  void someInfectedHasNoShareAndANumberWithoutPatientsSaysNothing() {
    ArmInfection some = of(Baseline.with().patients(20).infectedAnswer(YesOrNo.MIXED));
    assertEquals(Optional.of(YesOrNo.MIXED), some.atStart());
    assertEquals(Optional.empty(), some.share());
    assertEquals(Optional.empty(), some.count());
    assertEquals(Optional.empty(), of(Baseline.with().infected(events(5))).atStart());
    assertEquals(Optional.empty(), of(Baseline.with().patients(4).infected(events(5))).share());
  }

  @Test
  void countsGoBeforeWords() {
    assertInfected(
        of(Baseline.with().infectedAnswer(YesOrNo.YES).infected(EventCount.of(12, 20))),
        YesOrNo.MIXED,
        0.6,
        Optional.of(EventCount.of(12, 20)));
  }

  @Test
  void whatIsSaidOfAllGroupsHoldsForEachOnlyWhereItIsAllOrNone() {
    assertInfected(
        of(Baseline.with().patients(8), Baseline.with().infectedAnswer(YesOrNo.YES), "B"),
        YesOrNo.YES,
        1,
        Optional.of(EventCount.of(8, 8)));
    ArmInfection half =
        of(Baseline.with().patients(8), Baseline.with().infected(EventCount.of(10, 20)), "B");
    assertEquals(Optional.of(YesOrNo.MIXED), half.atStart());
    assertEquals(Optional.empty(), half.share());
  }
}
