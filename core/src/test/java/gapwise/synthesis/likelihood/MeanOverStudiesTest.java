package gapwise.synthesis.likelihood;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The mean of the inverse logit over a normal distribution, against another rule of quadrature. */
class MeanOverStudiesTest {
  @ParameterizedTest
  @CsvSource({"0, 0", "2.2, 0", "2.2, 0.3", "-4, 1", "3, 2.5", "6, 7", "-30, 12", "0, 40"})
  void itIsTheIntegralThatSimpsonsRuleGivesWithAHundredThousandSteps(double mean, double tau) {
    int steps = 100_000;
    double sum = 0;
    for (int i = 0; i <= steps; i++) {
      double u = -12 + 24.0 * i / steps;
      int weight = i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2;
      double density = Math.exp(-u * u / 2) / Math.sqrt(2 * Math.PI);
      sum += weight * density / (1 + Math.exp(-(mean + tau * u)));
    }
    assertEquals(sum * 24.0 / steps / 3, MeanOverStudies.proportion(mean, tau), 1e-12);
  }
}
