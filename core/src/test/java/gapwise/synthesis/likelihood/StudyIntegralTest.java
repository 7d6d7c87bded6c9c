package gapwise.synthesis.likelihood;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.numeric.GaussHermite;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** One study's integral against a plain trapezium rule, its derivatives against differences. */
class StudyIntegralTest {
  private static final double[] NONE = {0, 0};

  /** Some studies and a place. */
  record Case(String name, StudyLikelihoods studies, double mean, double tau) {}

  static Stream<Case> cases() {
    HypergeometricLikelihoods tables =
        new HypergeometricLikelihoods(
            new double[] {3, 0},
            new double[] {20, 15},
            new double[] {25, 12},
            new double[] {11, 4});
    BinomialLikelihoods first =
        new BinomialLikelihoods(new double[] {3, 0}, new double[] {20, 15}, NONE);
    BinomialLikelihoods second =
        new BinomialLikelihoods(new double[] {8, 4}, new double[] {25, 12}, NONE);
    return Stream.of(0.1, 0.8, 2.5)
        .flatMap(
            tau ->
                Stream.of(
                    new Case("binomial", second, 0.3, tau),
                    new Case(
                        "binomial with offset",
                        new BinomialLikelihoods(
                            new double[] {7, 0}, new double[] {7, 9}, new double[] {0.4, -1}),
                        0.3,
                        tau),
                    new Case(
                        "Poisson",
                        new PoissonLikelihoods(new double[] {4, 0}, new double[] {110, 35}),
                        -3,
                        tau),
                    new Case("hypergeometric", tables, -0.6, tau),
                    new Case(
                        "two arms, halves",
                        new TwoArmLikelihoods(first, second, tables, true),
                        -0.6,
                        tau),
                    new Case(
                        "two arms, 0 and 1",
                        new TwoArmLikelihoods(first, second, tables, false),
                        -0.6,
                        tau)));
  }

  private static double value(Case at, int study, int points, double[] place) {
    StudyIntegral integral = new StudyIntegral(at.studies(), GaussHermite.of(points));
    integral.at(study, place[0], place[1], place[2], 0);
    return integral.value;
  }

  @ParameterizedTest
  @MethodSource("cases")
  void aHundredPointsAgreeWithATrapeziumRule(Case at) {
    for (int study = 0; study < 2; study++) {
      double[] d = new double[StudyLikelihoods.LENGTH];
      double sum = 0;
      int steps = 4000;
      for (int i = 0; i <= steps; i++) {
        double u = 10 * (2.0 * i / steps - 1);
        at.studies().second(study, at.mean() + at.tau() * u, -0.5, d);
        sum += Math.exp(d[StudyLikelihoods.VALUE] - u * u / 2) * (20.0 / steps);
      }
      double expected = Math.log(sum / Math.sqrt(2 * Math.PI));
      double found = value(at, study, 100, new double[] {at.mean(), at.tau(), -0.5});
      assertEquals(expected, found, 1e-7, at.name());
    }
  }

  /** Central differences of 1e-4 err by some 1e-8 in the first and 1e-6 in the second. */
  @ParameterizedTest
  @MethodSource("cases")
  void derivativesAreThoseOfTheSumAtAnyNumberOfPoints(Case at) {
    int parameters = at.studies().hasIntercepts() ? 3 : 2;
    for (int points : new int[] {1, 4, 25}) {
      for (int study = 0; study < 2; study++) {
        StudyIntegral integral = new StudyIntegral(at.studies(), GaussHermite.of(points));
        integral.at(study, at.mean(), at.tau(), -0.5, 0);
        for (int x = 0; x < parameters; x++) {
          double slope = difference(at, study, points, x);
          assertEquals(slope, integral.gradient[x], 1e-6, at.name() + " slope " + x);
          for (int y = 0; y < parameters; y++) {
            double bend = difference(at, study, points, x, y);
            assertEquals(bend, integral.hessian[x][y], 2e-5, at.name() + " bend " + x + y);
          }
        }
      }
    }
  }

  private static double difference(Case at, int study, int points, int x) {
    double[] place = {at.mean(), at.tau(), -0.5};
    place[x] += 1e-4;
    double up = value(at, study, points, place);
    place[x] -= 2e-4;
    return (up - value(at, study, points, place)) / 2e-4;
  }

  private static double difference(Case at, int study, int points, int x, int y) {
    StudyIntegral integral = new StudyIntegral(at.studies(), GaussHermite.of(points));
    double[] place = {at.mean(), at.tau(), -0.5};
    place[y] += 1e-4;
    integral.at(study, place[0], place[1], place[2], 0);
    double up = integral.gradient[x];
    place[y] -= 2e-4;
    integral.at(study, place[0], place[1], place[2], 0);
    return (up - integral.gradient[x]) / 2e-4;
  }

  /**
   * On the way there rates pass the largest double; the other lattice needs no search from afar.
   */
  @Test
  void aModeIsFoundPastRatesBeyondAllNumbers() {
    PoissonLikelihoods rates = new PoissonLikelihoods(new double[] {6}, new double[] {158.221});
    LatticeIntegral integral = new LatticeIntegral(rates);
    integral.at(0, 24.9438, 15.8414, 0, -2.39);
    double other = new StudyConvolution(rates, 0, 15.8414).log(24.9438);
    assertEquals(other, integral.value, 1e-6);
  }
}
