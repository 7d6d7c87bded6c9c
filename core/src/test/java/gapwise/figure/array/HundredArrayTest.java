package gapwise.figure.array;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.value.Estimate;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** A hundred marks: what is drawn is what is said. */
class HundredArrayTest {
  private static int boxes(String svg, String fill, String edge) {
    Matcher path =
        Pattern.compile("<path d=\"([^\"]*)\" fill=\"" + fill + "\" stroke=\"" + edge + "\"")
            .matcher(svg);
    return path.find() ? path.group(1).split("Z", -1).length - 1 : 0;
  }

  @Test
  void filledHatchedAndEmptyMarksAreAHundredHoweverTheLimitsLie() {
    for (int lower = 0; lower <= 1000; lower += 7) {
      for (int upper = lower; upper <= 1000; upper += 13) {
        double from = lower / 1000.0;
        double to = upper / 1000.0;
        HundredArray array = HundredArray.of(Estimate.of((from + to) / 2, from, to));
        assertEquals(100, array.filled() + array.hatched() + array.empty());
        assertEquals(Math.round(from * 100), array.filled());
        assertEquals(Math.round(to * 100), array.filled() + array.hatched());
      }
    }
  }

  @Test
  void theDrawingHasAsManyMarksOfEachKind() {
    String svg =
        ArrayDrawing.draw(HundredArray.of(Estimate.of(0.88, 0.78, 0.94)), "three numbers").svg();
    assertEquals(78, boxes(svg, "#1B2430", "none"));
    assertEquals(6, boxes(svg, "#958A70", "none"));
    assertTrue(svg.contains("<title>three numbers</title>"));
  }

  @Test
  void marksBeyondAHundredAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> new HundredArray(60, 41, 0.5));
    assertThrows(IllegalArgumentException.class, () -> new HundredArray(0, -1, 0.5));
    assertThrows(IllegalArgumentException.class, () -> new HundredArray(0, 0, 1.1));
  }

  @Test
  void anAxisHoldsAllThatStandsOnIt() {
    assertEquals(12, StageStrip.axisFor(3));
    assertEquals(18, StageStrip.axisFor(12.5));
    Optional<Estimate> frame = Optional.of(Estimate.of(12, 10, 15));
    assertThrows(
        IllegalArgumentException.class, () -> new StageStrip(1, frame, Optional.empty(), 12));
  }
}
