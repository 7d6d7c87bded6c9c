package gapwise.decision.situation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The four shares of the information. */
class FitTest {
  @Test
  void sharesGoByWeight() {
    Fit fit =
        Fit.of(
            List.of(
                new Fit.Part(Match.INSIDE, 3),
                new Fit.Part(Match.OUTSIDE, 1),
                new Fit.Part(Match.INSIDE, 1)));
    assertEquals(new Fit(0.8, 0, 0.2, 0), fit);
    assertEquals("80 % inside, 0 % at the edge, 20 % outside, 0 % unknown", fit.words());
  }

  @Test
  void wholePercentsSumToAHundredByLargestRemainder() {
    Fit thirds =
        Fit.of(
            List.of(
                new Fit.Part(Match.INSIDE, 1),
                new Fit.Part(Match.EDGE, 1),
                new Fit.Part(Match.UNKNOWN, 1)));
    Map<Match, Integer> percents = thirds.percents();
    assertEquals(100, percents.values().stream().mapToInt(Integer::intValue).sum());
    assertEquals(0, percents.get(Match.OUTSIDE));
  }

  @Test
  void withoutAGroupAllAreNothing() {
    assertEquals(Fit.NONE, Fit.of(List.of()));
    assertEquals(0, Fit.NONE.percents().values().stream().mapToInt(Integer::intValue).sum());
  }

  @Test
  void sharesThatDoNotSumToOneAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Fit(0.5, 0.1, 0.1, 0.1));
  }
}
