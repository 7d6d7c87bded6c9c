package gapwise.synthesis.survival;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.synthesis.survival.CurveReconstruction.Reconstructed;
import gapwise.synthesis.survival.DigitisedCurve.Point;
import gapwise.synthesis.survival.NumbersAtRisk.Mark;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Patients' times put back together: what must hold for any curve, and for curves of known times.
 */
class CurveReconstructionTest {
  static LongStream seeds() {
    return LongStream.range(0, 200);
  }

  private static PatientTimes invented(Random random) {
    int patients = 5 + random.nextInt(150);
    double lost = random.nextDouble() * 2;
    List<PatientTime> times = new ArrayList<>();
    for (int i = 0; i < patients; i++) {
      double event = 1 + Math.round(-Math.log(random.nextDouble()) * 100) / 10.0;
      double last = 1 + Math.round(random.nextDouble() * 400 / (0.1 + lost)) / 10.0;
      times.add(new PatientTime(Math.min(event, last), event <= last));
    }
    return PatientTimes.of(times);
  }

  /** The curve as read: each step, height rounded to so many decimals, and its end. */
  private static DigitisedCurve read(PatientTimes times, int decimals) {
    double scale = Math.pow(10, decimals);
    List<Point> points = new ArrayList<>();
    points.add(new Point(0, 1));
    for (KaplanMeier.Step step : KaplanMeier.of(times).steps()) {
      points.add(new Point(step.time(), Math.round(step.survival() * scale) / scale));
    }
    Point last = points.get(points.size() - 1);
    points.add(new Point(Math.max(times.longest(), last.time()), last.survival()));
    return DigitisedCurve.of(points);
  }

  private static List<Mark> marks(PatientTimes times, double every) {
    List<Mark> marks = new ArrayList<>();
    for (double time = 0; time <= times.longest() + every; time += every) {
      double at = time;
      marks.add(
          new Mark(time, (int) times.patients().stream().filter(p -> p.time() >= at).count()));
    }
    return marks;
  }

  private static long followed(PatientTimes times, double time) {
    return times.patients().stream().filter(p -> p.time() >= time).count();
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void patientsNumbersAtRiskAndTheCurveComeOutAsPublished(long seed) {
    PatientTimes truth = invented(new Random(seed));
    List<Mark> marks = marks(truth, 4);
    DigitisedCurve curve = read(truth, 3);
    Reconstructed done =
        CurveReconstruction.of(
            curve, NumbersAtRisk.of(truth.size(), marks), OptionalInt.of(truth.events()));
    assertEquals(truth.size(), done.times().size());
    for (Mark mark : marks) {
      if (!done.unreached().contains(mark)) {
        assertEquals(mark.patients(), followed(done.times(), mark.time()), "at " + mark.time());
      }
    }
    assertFollows(curve, done);
    assertEquals(truth.events(), done.times().events(), Math.max(3, truth.events() * 0.1));
  }

  /**
   * Whole patients come within half an event, 1/2n of the height before; a curve that fell too far
   * waits until the reading has come down to it.
   */
  private static void assertFollows(DigitisedCurve curve, Reconstructed done) {
    KaplanMeier made = KaplanMeier.of(done.times());
    double largest = 0;
    double bound = 0;
    double before = 1;
    for (Point point : curve.points()) {
      double height = made.survival(point.time());
      largest = Math.max(largest, Math.abs(height - point.survival()));
      long left = followed(done.times(), point.time());
      bound = Math.max(bound, left > 0 ? before / (2 * left) : before);
      assertEquals(point.survival(), height, bound + 1e-12, "at " + point.time());
      bound = Math.abs(height - point.survival());
      before = height;
    }
    assertEquals(done.largestDifference(), largest, 1e-12);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void anyFallingCurveWithAnyNumbersGivesAllPatientsAndNoFailure(long seed) {
    Random random = new Random(seed);
    List<Point> points = new ArrayList<>();
    double time = 0;
    double height = 1;
    for (int i = 0; i < 1 + random.nextInt(60); i++) {
      time += random.nextInt(4) == 0 ? 0 : random.nextDouble() * Math.pow(10, random.nextInt(5));
      height = random.nextInt(20) == 0 ? 0 : Math.max(0, height - random.nextDouble() * 0.1);
      points.add(new Point(time, height));
    }
    int patients = 1 + random.nextInt(random.nextBoolean() ? 5 : 3000);
    List<Mark> marks = new ArrayList<>();
    int left = patients;
    for (double at = 0; random.nextInt(8) > 0; at += random.nextDouble() * 20 + 1e-9) {
      marks.add(new Mark(at, at == 0 ? patients : left));
      left = random.nextInt(left + 1);
    }
    OptionalInt events =
        random.nextBoolean() ? OptionalInt.empty() : OptionalInt.of(random.nextInt(patients + 1));
    Reconstructed done =
        CurveReconstruction.of(
            DigitisedCurve.of(points), NumbersAtRisk.of(patients, marks), events);
    assertEquals(patients, done.times().size());
    long lost = done.times().patients().stream().filter(p -> !p.event()).count();
    assertEquals(patients, done.times().events() + lost);
    for (Mark mark : marks) {
      long found = followed(done.times(), mark.time());
      assertTrue(
          found == mark.patients() || (found < mark.patients() && done.unreached().contains(mark)),
          () -> found + " at " + mark);
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void withoutLossesTheCurveAloneGivesTheTimesBack(long seed) {
    Random random = new Random(seed);
    List<PatientTime> times = new ArrayList<>();
    for (int i = 0; i < 2 + random.nextInt(60); i++) {
      times.add(new PatientTime(1 + random.nextInt(30), true));
    }
    PatientTimes truth = PatientTimes.of(times);
    Reconstructed done =
        CurveReconstruction.of(
            read(truth, 3), NumbersAtRisk.of(truth.size(), List.of()), OptionalInt.empty());
    assertEquals(truth.patients(), done.times().patients());
  }

  @Test
  void theNumberOfEventsAloneTellsHowManyWereLost() {
    PatientTimes truth = invented(new Random(5));
    assertTrue(truth.events() < truth.size(), "some are lost");
    DigitisedCurve curve = read(truth, 3);
    NumbersAtRisk all = NumbersAtRisk.of(truth.size(), List.of());
    Reconstructed with = CurveReconstruction.of(curve, all, OptionalInt.of(truth.events()));
    Reconstructed without = CurveReconstruction.of(curve, all, OptionalInt.empty());
    assertEquals(truth.events(), with.times().events(), 1);
    assertTrue(without.times().events() > with.times().events());
  }

  @Test
  void halfAMillionPatientsComeOutAsPublished() {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i <= 2000; i++) {
      points.add(new Point(i, Math.exp(-i / 1000.0)));
    }
    Reconstructed done =
        CurveReconstruction.of(
            DigitisedCurve.of(points),
            NumbersAtRisk.of(500_000, List.of(new Mark(500, 250_000), new Mark(1000, 120_000))),
            OptionalInt.of(320_000));
    assertEquals(500_000, done.times().size());
    assertEquals(320_000, done.times().events(), 500);
    assertTrue(done.largestDifference() < 0.01, () -> "" + done.largestDifference());
  }
}
