package gapwise.synthesis.survival;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must hold for any pooled curve. */
class PooledCurveTest {
  static LongStream seeds() {
    return LongStream.range(0, 150);
  }

  private static PatientTimes study(Random random, int patients, double rate, double lost) {
    List<PatientTime> times = new ArrayList<>();
    for (int i = 0; i < patients; i++) {
      double event = Math.ceil(-Math.log(random.nextDouble()) / rate);
      double last = lost == 0 ? Double.MAX_VALUE : Math.ceil(random.nextDouble() * lost);
      times.add(new PatientTime(Math.min(event, last), event <= last));
    }
    return PatientTimes.of(times);
  }

  private static List<PatientTimes> studies(Random random) {
    List<PatientTimes> studies = new ArrayList<>();
    for (int i = 0; i < 2 + random.nextInt(8); i++) {
      studies.add(
          study(
              random,
              1 + random.nextInt(random.nextBoolean() ? 4 : 60),
              Math.pow(10, -random.nextInt(4)),
              random.nextBoolean() ? 0 : 1 + random.nextInt(60)));
    }
    return studies;
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void theCurveFallsWithinZeroAndOneAndItsLimitsHoldIt(long seed) {
    List<PatientTimes> studies = studies(new Random(seed));
    Optional<PooledCurve> curve = PooledCurve.of(studies, PooledCurve.times(studies), 0.95);
    double before = 1;
    for (PooledCurve.Point point : curve.map(PooledCurve::points).orElse(List.of())) {
      assertTrue(point.survival() >= 0 && point.survival() <= before, point::toString);
      assertTrue(point.studies() >= 2);
      point
          .limits()
          .ifPresent(
              l -> {
                assertTrue(l.lower() >= 0 && l.upper() <= 1);
                assertTrue(l.lower() <= point.survival() && point.survival() <= l.upper());
              });
      point
          .prediction()
          .ifPresent(p -> assertTrue(p.lower() <= point.limits().orElseThrow().lower()));
      before = point.survival();
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void theOrderOfStudiesDoesNotMatter(long seed) {
    Random random = new Random(seed);
    List<PatientTimes> studies = studies(random);
    List<PatientTimes> shuffled = new ArrayList<>(studies);
    Collections.shuffle(shuffled, random);
    List<Double> times = PooledCurve.times(studies);
    assertEquals(times, PooledCurve.times(shuffled));
    List<PooledCurve.Point> one = points(studies, times);
    List<PooledCurve.Point> other = points(shuffled, times);
    assertEquals(one.size(), other.size());
    for (int i = 0; i < one.size(); i++) {
      assertEquals(one.get(i).survival(), other.get(i).survival(), 1e-10);
    }
  }

  private static List<PooledCurve.Point> points(List<PatientTimes> studies, List<Double> times) {
    return PooledCurve.of(studies, times, 0.95).map(PooledCurve::points).orElse(List.of());
  }

  /** Combescure et al. 2014 keep this too: equal studies pool to their own curve. */
  @Test
  void equalStudiesPoolToTheirOwnCurveWithGreenwoodsErrorOfAllPatients() {
    PatientTimes one = study(new Random(3), 40, 0.1, 0);
    List<PatientTime> all = new ArrayList<>();
    List<PatientTimes> studies = Collections.nCopies(5, one);
    studies.forEach(study -> all.addAll(study.patients()));
    KaplanMeier together = KaplanMeier.of(PatientTimes.of(all));
    for (PooledCurve.Point point : points(studies, PooledCurve.times(studies))) {
      double survival = together.survivalAt(point.time()).orElseThrow();
      assertEquals(survival, point.survival(), 1e-12);
      if (survival > 0) {
        double error = together.standardErrorAt(point.time()).orElseThrow() / survival;
        assertEquals(error, point.standardErrorOfLog().orElseThrow(), 1e-12);
      }
    }
  }

  @Test
  void studiesThatDifferWidenTheLimits() {
    Random random = new Random(8);
    List<PatientTimes> alike = new ArrayList<>();
    List<PatientTimes> unlike = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      alike.add(study(random, 60, 0.1, 0));
      unlike.add(study(random, 60, i % 2 == 0 ? 0.05 : 0.2, 0));
    }
    List<Double> times = List.of(2.0, 4.0, 6.0, 8.0);
    double first = points(alike, times).get(3).standardErrorOfLog().orElseThrow();
    double second = points(unlike, times).get(3).standardErrorOfLog().orElseThrow();
    assertTrue(second > 2 * first, () -> first + " " + second);
  }

  /** Between two times events come at a constant rate: from 0.8 at 4 to 0.2 at 8, half at 5.356. */
  @Test
  void theMedianLiesBetweenTheTimesAroundIt() {
    List<PatientTime> times = new ArrayList<>();
    for (double time : new double[] {3, 4, 5, 6, 6, 7, 7, 8, 9, 9}) {
      times.add(new PatientTime(time, true));
    }
    List<PatientTimes> studies = Collections.nCopies(2, PatientTimes.of(times));
    PooledCurve curve = PooledCurve.of(studies, List.of(4.0, 8.0), 0.95).orElseThrow();
    double expected = 4 + 4 * Math.log(0.8 / 0.5) / Math.log(0.8 / 0.2);
    assertEquals(expected, curve.median().orElseThrow(), 1e-9);
  }

  @Test
  void oneStudyOrNoEventsGiveNoPooledCurve() {
    PatientTimes lost = PatientTimes.of(List.of(new PatientTime(3, false)));
    assertFalse(PooledCurve.of(List.of(lost), List.of(2.0), 0.95).isPresent());
    assertEquals(List.of(), PooledCurve.times(List.of(lost, lost)));
    assertFalse(PooledCurve.of(List.of(lost, lost), List.of(5.0), 0.95).isPresent());
  }
}
