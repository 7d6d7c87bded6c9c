package gapwise.evidence.unit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class LengthRangeTest {
  @Test
  void aStretchUnderALengthHoldsItsShorterEndAndNotItsLonger() {
    LengthRange band = LengthRange.under(2, 4);
    assertTrue(band.contains(2));
    assertTrue(band.contains(3.99999));
    assertFalse(band.contains(4));
  }

  @Test
  void itsEndReadsInFewDigits() {
    assertEquals("3.999999", String.valueOf(LengthRange.under(2, 4).toCentimetres()));
    // 0.3 - 0.000001 in binary arithmetic is 0.29999899999999996
    assertEquals("0.299999", String.valueOf(LengthRange.under(0, 0.3).toCentimetres()));
  }

  @Test
  void neighboursShareNoLength() {
    assertFalse(LengthRange.under(2, 4).overlaps(LengthRange.under(4, 6)));
    assertTrue(new LengthRange(2, 4).overlaps(LengthRange.under(4, 6)));
  }

  @Test
  void aStretchUnderItsOwnStartIsThatStartAlone() {
    assertEquals(new LengthRange(4, 4), LengthRange.under(4, 4));
  }

  @Test
  void aStretchThatEndsBelowItsStartIsThatStartAloneAndNoLengthIsNegative() {
    assertEquals(new LengthRange(0, 0), LengthRange.under(0, 0));
    assertThrows(IllegalArgumentException.class, () -> LengthRange.under(-1, 4));
    assertThrows(IllegalArgumentException.class, () -> LengthRange.under(Double.NaN, 4));
  }
}
