package gapwise.figure.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SvgTest {
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "-0.004, 0",
    "0.005, 0.01",
    "-0.005, -0.01",
    "1.005, 1.01",
    "2.675, 2.68",
    "10, 10",
    "10.5, 10.5",
    "10.05, 10.05",
    "-3.14159, -3.14",
    "0.1, 0.1",
    "999999.994, 999999.99",
    "1e12, 1000000000000",
    "4.9e-324, 0"
  })
  void numbersHaveAtMostTwoDecimals(double value, String written) {
    assertEquals(written, Svg.n(value));
  }

  /** Against the decimal arithmetic of Java's own library. */
  @Test
  void numbersAreRoundedOnTheirDecimalDigits() {
    Random random = new Random(20261126);
    for (int i = 0; i < 200_000; i++) {
      // Every third stands on or next to a tie of thousandths.
      double value =
          i % 3 == 0
              ? (random.nextInt(4_000_000) - 2_000_000) / 1000.0
              : (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(12));
      BigDecimal rounded =
          BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP).stripTrailingZeros();
      String expected = rounded.signum() == 0 ? "0" : rounded.toPlainString();
      assertEquals(expected, Svg.n(value), () -> "of " + value);
    }
  }

  @Test
  void whatIsNoNumberIsRefused() {
    assertThrows(NumberFormatException.class, () -> Svg.n(Double.NaN));
    assertThrows(NumberFormatException.class, () -> Svg.n(Double.POSITIVE_INFINITY));
  }

  /** XML 1.0, 2.2 (Char) and 2.4 (character data). */
  @ParameterizedTest
  @CsvSource({
    "plain, plain",
    "a<b, a&lt;b",
    "a&b, a&amp;b",
    "a>b, a&gt;b",
    "Müller – 3, Müller – 3"
  })
  void textIsEscaped(String text, String escaped) {
    assertEquals(escaped, Svg.escaped(text));
  }

  @Test
  void charactersThatXmlDoesNotAllowAreReplaced() {
    assertEquals("a\uFFFDb", Svg.escaped("a\u0000b"));
    assertEquals("a\uFFFDb", Svg.escaped("a\uFFFEb"));
    assertEquals("a\uFFFDb", Svg.escaped("a\uD800b"));
    assertEquals("\uD83E\uDDB4", Svg.escaped("\uD83E\uDDB4"));
    assertEquals("&quot;", Svg.escaped("\""));
  }
}
