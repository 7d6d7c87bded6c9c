package gapwise.synthesis.bayes;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class GaussLegendreTest {
  private static double integral(DoubleUnaryOperator function) {
    double sum = 0;
    for (int i = 0; i < GaussLegendre.POINTS; i++) {
      sum += GaussLegendre.weight(i) * function.applyAsDouble(GaussLegendre.place(i));
    }
    return sum;
  }

  @Test
  void isExactForPolynomialsToDegreeThirtyOne() {
    // The integral of x^n from -1 to 1 is 2/(n + 1) for even n, 0 for odd n.
    for (int n = 0; n < 2 * GaussLegendre.POINTS; n++) {
      int power = n;
      double exact = n % 2 == 0 ? 2.0 / (n + 1) : 0;
      assertEquals(exact, integral(x -> Math.pow(x, power)), 1e-14, "degree " + n);
    }
  }

  @Test
  void isNotExactForDegreeThirtyTwo() {
    // Its error is 2^33 16!^4/(33 32!^2) for x^32 (Abramowitz and Stegun 25.4.29, f^(2n) = 32!).
    double exact = 2.0 / 33;
    double error = Math.pow(2, 33) / 33;
    for (int i = 1; i <= 16; i++) {
      error *= (double) i * i / ((16.0 + i) * (16.0 + i));
    }
    assertEquals(exact - error, integral(x -> Math.pow(x, 32)), 1e-14);
  }

  @Test
  void interpolatesAPolynomialThroughItsPoints() {
    double[] values = new double[GaussLegendre.POINTS];
    for (int i = 0; i < values.length; i++) {
      values[i] = Math.pow(GaussLegendre.place(i), 15) - 2 * GaussLegendre.place(i);
    }
    assertEquals(Math.pow(0.3, 15) - 0.6, GaussLegendre.interpolate(values, 0.3), 1e-14);
    assertEquals(values[4], GaussLegendre.interpolate(values, GaussLegendre.place(4)), 0);
  }
}
