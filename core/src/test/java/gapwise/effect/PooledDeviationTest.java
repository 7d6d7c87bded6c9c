package gapwise.effect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class PooledDeviationTest {
  private static ArmMean group(double n, double sd) {
    return new ArmMean(n, OptionalDouble.of(1), OptionalDouble.of(sd), false, false);
  }

  /** NumPy, core/src/test/reference/mean_posteriors.py. */
  @Test
  void varianceCountsByThePatientsThatTellOfIt() {
    assertEquals(
        1.0281336603425704,
        ArmMean.pooledDeviation(List.of(group(14, 0.9), group(22, 1.1))).getAsDouble(),
        1e-15);
  }

  @Test
  void onePatientAndGroupsWithoutASpreadSayNothing() {
    ArmMean without = new ArmMean(30, OptionalDouble.of(1), OptionalDouble.empty(), false, false);
    assertTrue(ArmMean.pooledDeviation(List.of(without, group(1, 3))).isEmpty());
    assertEquals(
        0.9, ArmMean.pooledDeviation(List.of(without, group(1, 3), group(14, 0.9))).getAsDouble());
  }

  /** Of two groups of one size the root of the mean of squares: 3 and 4 give root 12.5. */
  @Test
  void unitsFarFromOneKeepTheirDigits() {
    for (double unit : new double[] {1e-200, 1, 1e200}) {
      double pooled =
          ArmMean.pooledDeviation(List.of(group(8, 3 * unit), group(8, 4 * unit))).getAsDouble();
      assertEquals(Math.sqrt(12.5), pooled / unit, 1e-14);
    }
    assertEquals(0, ArmMean.pooledDeviation(List.of(group(8, 0), group(8, 0))).getAsDouble());
  }
}
