package gapwise.figure.ranks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.drawing.Contrast;
import gapwise.figure.drawing.DrawnSvg;
import gapwise.figure.drawing.Medium;
import java.util.List;
import org.junit.jupiter.api.Test;

class RankSharesTest {
  @Test
  void numbersStandOutFromEveryShadeAndShadesGrowLighter() {
    for (int ranks = 2; ranks <= RankShares.MOST_BARS; ranks++) {
      for (int rank = 0; rank < ranks; rank++) {
        RankShade shade = RankShade.of(rank, ranks);
        // WCAG 2.2, 1.4.3.
        assertTrue(Contrast.between(shade.ink(), shade.fill()) >= 4.5, shade::toString);
        if (rank > 0) {
          int before = Integer.parseInt(RankShade.of(rank - 1, ranks).fill().substring(1, 3), 16);
          assertTrue(Integer.parseInt(shade.fill().substring(1, 3), 16) > before + 5);
        }
      }
    }
  }

  @Test
  void barsSayWhatTheirNumbersAre() {
    RankShares figure = InventedRanks.of(2, List.of());
    List<String> words =
        DrawnSvg.of(figure.draw(Medium.PAGE).get(0)).letters().stream()
            .map(DrawnSvg.Letters::text)
            .toList();
    // exp(0) against exp(-0.5): 62 of 100; drawn to within 0.31 of 100.
    assertTrue(words.contains("first in 62 of 100 (drawn to within 0.31)"), words::toString);
    assertTrue(words.contains("38") && words.contains("first in 0 of 100"), words::toString);
    assertEquals(5, figure.csv().lines().count());
  }

  @Test
  void sharesThatDoNotAddUpAreRefused() {
    RankShares.Bar bar = InventedRanks.of(2, List.of()).bars().get(0);
    assertThrows(
        IllegalArgumentException.class, () -> new RankShares.Bar(bar.kind(), List.of(0.5, 0.6), 0));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new RankShares(
                "t",
                List.of(),
                List.of(bar),
                List.of(),
                InventedRanks.of(2, List.of()).provenance()));
  }
}
