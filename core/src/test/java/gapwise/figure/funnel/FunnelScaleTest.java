package gapwise.figure.funnel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Which numbers stand under a funnel. What is round is our choice; no source. */
class FunnelScaleTest {
  private static double logit(double of100) {
    return Math.log(of100 / (100 - of100));
  }

  private static List<String> of100(double from, double to) {
    return FunnelScale.LOGIT.covering(logit(from), logit(to), 6).ticks().stream()
        .map(FunnelScale.Tick::words)
        .toList();
  }

  @Test
  void sharesAreToldAtTheUsualNumbersOfAHundred() {
    assertEquals(List.of("50", "60", "70", "80", "90", "95"), of100(41, 97));
  }

  @Test
  void sharesThatLieCloseAreToldAtThreeRoundNumbersAtLeast() {
    assertEquals(List.of("92", "93", "94"), of100(91.2, 94.6));
    assertEquals(List.of("60", "65", "70"), of100(56, 74));
    assertEquals(List.of("99.2", "99.4", "99.6"), of100(99.1, 99.75));
  }

  @ParameterizedTest
  @EnumSource(FunnelScale.class)
  void everyAxisHasThreeTicksWithinItsEnds(FunnelScale scale) {
    Random random = new Random(11);
    for (int i = 0; i < 2000; i++) {
      double lower = 8 * random.nextDouble() - 4;
      double upper = lower + 0.05 + 5 * random.nextDouble();
      FunnelScale.Stretch stretch = scale.covering(lower, upper, 4 + random.nextInt(6));
      assertTrue(stretch.ticks().size() >= 3, lower + " to " + upper + ": " + stretch);
      for (FunnelScale.Tick tick : stretch.ticks()) {
        double at = tick.at();
        assertTrue(stretch.lower() - 1e-9 <= at && at <= stretch.upper() + 1e-9, tick.toString());
      }
    }
  }
}
