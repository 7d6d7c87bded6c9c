package gapwise.effect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class SpreadConversionTest {

  /**
   * Worked example of the Cochrane Handbook, section 6.5.2: 25 patients, interval 30.0 to 34.2,
   * standard deviation 5.09 to the two printed digits; derived by
   * core/src/test/reference/constants.py.
   */
  @Test
  void theIntervalOfAMeanGivesTheStandardDeviationOfTheHandbook() {
    assertEquals(5.09, SpreadConversion.fromLimits(30.0, 34.2, 25).orElseThrow(), 0.005);
  }

  @Test
  void aStandardErrorGrowsByTheRootOfThePatients() {
    assertEquals(6, SpreadConversion.fromStandardError(1.5, 16), 1e-12);
  }

  @Test
  void onePatientHasNoInterval() {
    assertTrue(SpreadConversion.fromLimits(1, 2, 1).isEmpty());
  }

  @Test
  void limitsOutOfOrderAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> SpreadConversion.fromLimits(2, 1, 9));
    assertThrows(IllegalArgumentException.class, () -> SpreadConversion.fromStandardError(-1, 9));
  }
}
