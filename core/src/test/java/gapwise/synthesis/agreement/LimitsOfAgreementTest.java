package gapwise.synthesis.agreement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;

class LimitsOfAgreementTest {
  @Test
  void areMeanAndMultiplesOfTheDeviation() {
    // 2, 4, 4, 4, 5, 5, 7, 9: mean 5, squares about it 32, so sd = root(32/7).
    LimitsOfAgreement limits =
        LimitsOfAgreement.of(List.of(2.0, 4.0, 4.0, 4.0, 5.0, 5.0, 7.0, 9.0), 1.96);
    double sd = Math.sqrt(32.0 / 7);
    assertEquals(5, limits.mean(), 1e-14);
    assertEquals(sd, limits.sd(), 1e-14);
    assertEquals(5 - 1.96 * sd, limits.lower(), 1e-14);
    assertEquals(5 + 1.96 * sd, limits.upper(), 1e-14);
  }

  @Test
  void turnOverWhenRatersChangePlaces() {
    LimitsOfAgreement one = LimitsOfAgreement.of(List.of(-1.0, 0.5, 3.0), 2);
    LimitsOfAgreement other = LimitsOfAgreement.of(List.of(1.0, -0.5, -3.0), 2);
    assertEquals(-one.upper(), other.lower(), 1e-15);
    assertEquals(-one.lower(), other.upper(), 1e-15);
  }

  @Test
  void keepTheirWidthWhenOneRaterAlwaysGivesMore() {
    LimitsOfAgreement one = LimitsOfAgreement.of(List.of(-1.0, 0.5, 3.0), 2);
    LimitsOfAgreement other = LimitsOfAgreement.of(List.of(9.0, 10.5, 13.0), 2);
    assertEquals(one.mean() + 10, other.mean(), 1e-14);
    assertEquals(one.sd(), other.sd(), 1e-14);
  }

  @Test
  void ofTwoDifferencesAreThere() {
    // Mean 2, squares about it 1 + 1 over one degree of freedom.
    assertEquals(2 + 2 * Math.sqrt(2), LimitsOfAgreement.of(List.of(1.0, 3.0), 2).upper(), 1e-14);
  }

  @Test
  void needTwoDifferences() {
    assertThrows(IllegalArgumentException.class, () -> LimitsOfAgreement.of(List.of(1.0), 1.96));
  }
}
