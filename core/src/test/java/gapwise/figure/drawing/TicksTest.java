package gapwise.figure.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TicksTest {
  @Test
  void aHundredIsTickedInTwenties() {
    assertEquals(numbers("0 20 40 60 80 100"), plain(Ticks.linear(0, 100, 6)));
    assertEquals(numbers("0 10 20 30 40 50 60 70 80 90 100"), plain(Ticks.linear(0, 100, 11)));
  }

  @Test
  void aFractionIsTickedWithoutFloatingNoise() {
    assertEquals(numbers("0.0 0.1 0.2 0.3 0.4"), plain(Ticks.linear(0.01, 0.39, 6)));
  }

  @Test
  void aLogAxisIsTickedAtOneTwoAndFive() {
    assertEquals(numbers("0.1 0.2 0.5 1 2"), plain(Ticks.logarithmic(.12, 1.7, 8)));
    assertEquals(numbers("0.01 0.1 1 10"), plain(Ticks.logarithmic(.013, 5.7, 6)));
  }

  @Test
  void aVeryLongLogAxisIsTickedAtEveryFewPowersOfTen() {
    Ticks ticks = Ticks.logarithmic(2e-9, 3e8, 7);
    assertTrue(ticks.values().size() <= 7 && ticks.values().size() >= 3, ticks.toString());
    assertTrue(ticks.lower() <= 2e-9 && ticks.upper() >= 3e8, ticks.toString());
  }

  @Test
  void linearTicksAlwaysCoverAreFewAndEvenAtRoundSteps() {
    Random random = new Random(7);
    for (int i = 0; i < 5000; i++) {
      double size = Math.pow(10, random.nextInt(12) - 6);
      double a = (random.nextDouble() - .5) * size;
      double b = a + random.nextDouble() * size + size * 1e-6;
      int most = 4 + random.nextInt(7);
      Ticks ticks = Ticks.linear(a, b, most);
      assertTrue(ticks.lower() <= a && ticks.upper() >= b, a + " " + b + " " + ticks);
      assertTrue(ticks.values().size() >= 3 && ticks.values().size() <= most, ticks.toString());
      BigDecimal step = ticks.values().get(1).subtract(ticks.values().get(0));
      assertTrue(
          List.of("1", "2", "5").contains(step.stripTrailingZeros().unscaledValue().toString()),
          step.toString());
      for (int j = 1; j < ticks.values().size(); j++) {
        BigDecimal next = ticks.values().get(j).subtract(ticks.values().get(j - 1));
        assertEquals(0, step.compareTo(next), ticks.toString());
      }
    }
  }

  @Test
  void logTicksAlwaysCoverAndAreFewAndRising() {
    Random random = new Random(8);
    for (int i = 0; i < 5000; i++) {
      double a = Math.exp((random.nextDouble() - .5) * 20);
      double b = a * Math.exp(random.nextDouble() * 12);
      int most = 4 + random.nextInt(6);
      Ticks ticks = Ticks.logarithmic(a, b, most);
      double slack = 1e-9;
      assertTrue(
          ticks.lower() <= a * (1 + slack) && ticks.upper() >= b * (1 - slack),
          a + " " + b + " " + ticks);
      assertTrue(ticks.values().size() >= 3 && ticks.values().size() <= most, ticks.toString());
      for (int j = 1; j < ticks.values().size(); j++) {
        assertTrue(ticks.values().get(j).compareTo(ticks.values().get(j - 1)) > 0);
      }
    }
  }

  @Test
  void aLogAxisOfLessThanADecadeIsTickedAtThreeRoundNumbersAtLeast() {
    assertEquals(numbers("1.2 1.4 1.6 1.8"), plain(Ticks.logarithmic(1.21, 1.79, 4)));
    assertEquals(numbers("2 2.5 3 3.5"), plain(Ticks.logarithmic(2.1, 3.5, 4)));
    assertEquals(numbers("0.8 0.9 1.0"), plain(Ticks.logarithmic(0.83, 0.99, 4)));
    assertEquals(numbers("1 2 5"), plain(Ticks.logarithmic(1.21, 4, 4)));
  }

  @Test
  void oneValueAloneStillGetsAnAxis() {
    Ticks linear = Ticks.linear(5, 5, 5);
    assertTrue(linear.lower() < 5 && linear.upper() > 5, linear.toString());
    Ticks log = Ticks.logarithmic(1, 1, 5);
    assertTrue(log.lower() <= 1 && log.upper() >= 1 && log.lower() < log.upper(), log.toString());
  }

  private static List<BigDecimal> numbers(String words) {
    return List.of(words.split(" ")).stream().map(w -> strip(new BigDecimal(w))).toList();
  }

  private static List<BigDecimal> plain(Ticks ticks) {
    return ticks.values().stream().map(TicksTest::strip).toList();
  }

  private static BigDecimal strip(BigDecimal value) {
    return value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
  }
}
