package gapwise.paper.curve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.paper.trace.DataPoint;
import gapwise.paper.trace.Steps;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.survival.KaplanMeier;
import gapwise.synthesis.survival.PatientTime;
import gapwise.synthesis.survival.PatientTimes;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Times rebuilt from curves of invented patients, against these patients. */
class RebuiltTest {
  private static PatientTimes patients(long seed, int count) {
    Random random = new Random(seed);
    List<PatientTime> patients = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double event = -10 * Math.log(1 - random.nextDouble());
      double seen = 5 + 20 * random.nextDouble();
      double time = Math.rint(Math.min(event, seen) * 100) / 100 + 0.01;
      patients.add(new PatientTime(time, event <= seen));
    }
    return PatientTimes.of(patients);
  }

  private static Steps steps(PatientTimes times) {
    List<DataPoint> points = new ArrayList<>();
    points.add(new DataPoint(0, 1));
    for (KaplanMeier.Step step : KaplanMeier.of(times).steps()) {
      points.add(new DataPoint(step.time(), step.survival()));
    }
    points.add(new DataPoint(times.longest(), points.get(points.size() - 1).y()));
    return ((Steps.Found) Steps.of(points)).steps();
  }

  private static Reported reported(PatientTimes times, boolean marks, int step) {
    List<Double> at = new ArrayList<>();
    List<Integer> numbers = new ArrayList<>();
    for (int time = 0; step > 0 && time <= times.longest(); time += step) {
      double t = time;
      at.add(t);
      numbers.add((int) times.patients().stream().filter(p -> p.time() >= t).count());
    }
    List<Double> seen =
        times.patients().stream().filter(p -> !p.event()).map(PatientTime::time).toList();
    return new Reported(
        times.size(),
        at,
        numbers,
        marks ? seen : List.of(),
        OptionalInt.of(times.events()),
        OptionalDouble.empty());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void withEveryMarkEveryTimeComesBack(long seed) {
    PatientTimes truth = patients(seed, 40);
    Rebuilt rebuilt = Rebuilt.of(steps(truth), reported(truth, true, 6));
    assertTrue(rebuilt.byMarks());
    assertEquals(truth.patients(), rebuilt.times().patients());
    assertEquals(0, rebuilt.largestDifference(), 1e-9);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void withoutMarksTheCurveComesBackNearly(long seed) {
    PatientTimes truth = patients(seed, 120);
    Rebuilt rebuilt = Rebuilt.of(steps(truth), reported(truth, false, 3));
    assertFalse(rebuilt.byMarks());
    assertEquals(truth.size(), rebuilt.times().size());
    assertEquals(truth.events(), rebuilt.times().events(), 3);
    assertTrue(rebuilt.largestDifference() < 0.03, "" + rebuilt.largestDifference());
    assertTrue(rebuilt.meanDifference() < 0.01, "" + rebuilt.meanDifference());
  }

  /** Two patients last seen at one time make one mark, so the marks alone cannot be trusted. */
  @Test
  void aMarkForTwoPatientsIsNotedByTheNumbersAtRisk() {
    PatientTimes truth =
        PatientTimes.of(
            List.of(
                new PatientTime(2, true),
                new PatientTime(3, false),
                new PatientTime(3, false),
                new PatientTime(5, true),
                new PatientTime(8, true),
                new PatientTime(9, false)));
    Reported reported =
        new Reported(
            6,
            List.of(0.0, 4.0, 8.0),
            List.of(6, 3, 2),
            List.of(3.0, 9.0),
            OptionalInt.empty(),
            OptionalDouble.empty());
    Rebuilt rebuilt = Rebuilt.of(steps(truth), reported);
    assertFalse(rebuilt.byMarks());
    assertEquals(3, rebuilt.times().events());
  }

  @Test
  void whatThePaperPrintsIsCompared() {
    PatientTimes truth = patients(9, 60);
    Reported plain = reported(truth, true, 6);
    Rebuilt wrong =
        Rebuilt.of(
            steps(truth),
            new Reported(
                60,
                plain.times(),
                plain.atRisk(),
                List.of(),
                OptionalInt.of(1),
                OptionalDouble.of(0.5)));
    String all = String.join(" ", wrong.sentences());
    assertTrue(all.contains("the paper prints 1"), all);
    assertTrue(all.contains("check the axis"), all);
    Rebuilt right =
        Rebuilt.of(
            steps(truth),
            new Reported(
                60,
                plain.times(),
                plain.atRisk(),
                plain.seenLast(),
                plain.events(),
                steps(truth).median()));
    assertTrue(String.join(" ", right.sentences()).contains("events that the paper prints"));
  }

  @Test
  void whatCannotBeIsToldAllAtOnce() {
    WrongInputException wrong =
        assertThrows(
            WrongInputException.class,
            () ->
                new Reported(
                    10,
                    List.of(0.0, 4.0, 3.0),
                    List.of(9, 11, 2),
                    List.of(),
                    OptionalInt.of(12),
                    OptionalDouble.empty()));
    assertEquals(4, wrong.problems().size(), wrong.problems().toString());
  }
}
