package gapwise.synthesis.patients;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The likelihood of events: integrals by another rule, derivatives by differences. */
class EventSurfaceTest {
  @ParameterizedTest
  @CsvSource({"7, 10, 0.4, -0.8, 1.2", "0, 12, -1.5, 0.5, 2", "12, 12, 2, 0.3, 0.7"})
  void theChanceInAnArmWhoseModeratorSpreadsIsTheMeanOverANormalModerator(
      double events, double total, double eta, double slope, double spread) {
    EventTerms terms = new EventTerms();
    terms.at(events, total, eta, slope, spread);
    // The trapezoidal rule over +-12 standard deviations is exact to rounding for such integrands.
    double sum = 0;
    double step = 0.01;
    for (double t = -12; t <= 12; t += step) {
      double chance = 1 / (1 + Math.exp(-(eta + slope * spread * t)));
      sum += step * chance * Math.exp(-t * t / 2) / Math.sqrt(2 * Math.PI);
    }
    double expected =
        (events > 0 ? events * Math.log(sum) : 0)
            + (total > events ? (total - events) * Math.log1p(-sum) : 0);
    assertEquals(expected, terms.value, 1e-8);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void derivativesAreThoseOfTheLikelihood(long seed) {
    Random random = new Random(seed);
    List<StudyEvidence<CountArm>> studies = new ArrayList<>();
    for (int s = 0; s < 5; s++) {
      List<Patient> patients = new ArrayList<>();
      for (int i = 0; i < 6; i++) {
        patients.add(new Patient(random.nextInt(2), s + random.nextGaussian()));
      }
      CountArm arm =
          new CountArm(
              random.nextInt(9),
              8,
              s,
              s % 2 == 0 ? OptionalDouble.of(1.5) : OptionalDouble.empty());
      studies.add(
          new StudyEvidence<>(
              "S" + s, s == 4 ? List.of() : patients, s == 0 ? List.of() : List.of(arm)));
    }
    Slopes slopes = Slopes.of(studies, CountArm::moderator);
    EventSurface surface = new EventSurface(EventRows.of(studies, slopes), slopes, 61);
    double[] place = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian(), 0.8};
    EventSurface.Height here = surface.at(place, false);
    double h = 1e-5;
    for (int i = 0; i < place.length; i++) {
      double[] up = place.clone();
      double[] down = place.clone();
      up[i] += h;
      down[i] -= h;
      EventSurface.Height above = surface.at(up, false);
      EventSurface.Height below = surface.at(down, false);
      assertEquals((above.value() - below.value()) / (2 * h), here.gradient()[i], 1e-6);
      for (int j = 0; j < place.length; j++) {
        assertEquals(
            (above.gradient()[j] - below.gradient()[j]) / (2 * h), here.bends()[i][j], 1e-5);
      }
    }
  }
}
