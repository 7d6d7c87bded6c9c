package gapwise.figure.funnel;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class FunnelDescriptionTest {
  /** The funnel of ratios with its middle so far out that few of its series lie beyond. */
  private static String told(double middle) {
    Funnel from = InventedFunnels.ratios();
    Funnel moved =
        new Funnel(
            from.title(),
            from.sentences(),
            from.axis(),
            from.scale(),
            from.points(),
            Optional.of(new Funnel.Centre(middle, 0.95, 1.959964)),
            from.contours(),
            from.imagined().subList(0, 1),
            from.cautions(),
            from.provenance());
    return moved.description();
  }

  @Test
  void oneSeriesLiesAndSeveralLieToTheLeft() {
    assertTrue(
        told(-1.4).contains("; 1 series lies left of the middle line, 15 right of it or on it. "));
    assertTrue(
        told(-1.3).contains("; 2 series lie left of the middle line, 14 right of it or on it. "));
  }

  @Test
  void oneImaginedSeriesIsNoData() {
    assertTrue(told(-1.4).contains(" 1 imagined series is no data. "));
    assertTrue(InventedFunnels.ratios().description().contains(" 3 imagined series are no data. "));
  }
}
