package gapwise.figure.bubble;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.SeriesCount;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class BubbleDrawingTest {
  private static final MethodMark RING =
      new MethodMark("bone-transport", "Bone transport", "ring", "#2128D2");

  private static Bubble.Point point(double length, double value, double weight) {
    return new Bubble.Point(
        "Invented " + length,
        RING,
        length,
        Optional.of(new Limits(length - 1, length + 2)),
        "range",
        value,
        Optional.of(new Limits(Math.max(0, value - 0.1), Math.min(1, value + 0.1))),
        OptionalDouble.of(20),
        OptionalDouble.of(weight),
        "");
  }

  private static Bubble.At at(double length, double value, boolean beyond) {
    return new Bubble.At(
        length, value, new Limits(value - 0.05, value + 0.05), Optional.empty(), beyond);
  }

  private static Bubble figure(List<Bubble.At> curve) {
    return figure(curve, List.of(point(4, 0.9, 80), point(9, 0.7, 20)));
  }

  private static Bubble figure(List<Bubble.At> curve, List<Bubble.Point> points) {
    return new Bubble(
        "Union by length",
        List.of(),
        Quantity.of100(),
        new AxisWords("of 100", "", "better for patients", List.of()),
        points,
        curve,
        List.of("Invented."),
        new FigureProvenance(
            SeriesCount.of(2), "40 limbs", "line", "test", Optional.empty(), true));
  }

  @Test
  void theLineIsDashedBeyondTheDataAndTheSideIsNamed() {
    List<Bubble.At> curve =
        List.of(at(13, 0.5, true), at(4, 0.9, false), at(9, 0.7, false), at(17, 0.4, true));
    String svg = figure(curve).draw(Medium.PAGE).get(0).svg();
    assertTrue(svg.contains(">beyond the data<"), svg);
    assertTrue(svg.contains("beyond the data: a guess"), svg);
  }

  @Test
  void aLineThatStaysWithinTheDataNamesNothingBeyond() {
    List<Bubble.At> curve = List.of(at(4, 0.9, false), at(9, 0.7, false));
    String svg = figure(curve).draw(Medium.PAGE).get(0).svg();
    assertFalse(svg.contains("beyond the data"), svg);
  }

  @Test
  void theCurveIsKeptInTheOrderOfLengths() {
    Bubble figure = figure(List.of(at(9, 0.7, false), at(4, 0.9, false)));
    assertEquals(4, figure.curve().get(0).lengthCentimetres());
  }

  @Test
  void theTableTellsWhatTheMarksShow() {
    BubbleTable table = new BubbleTable(figure(List.of(at(4, 0.9, false))));
    assertEquals("3 to 6 (range)", table.spread(table.bubble().points().get(0)));
    assertEquals("90 (80 to 100)", table.value(table.bubble().points().get(0)));
    assertEquals(4, table.csv().lines().count());
  }

  @Test
  void whereAllSeriesAreAlikeTheAxisStillSpansTwentyOf100() {
    for (double share : new double[] {0, 1e-9, 0.005, 0.5, 0.995, 1 - 1e-9, 1}) {
      List<Bubble.Point> alike = List.of(point(4, share, 50), point(9, share, 50));
      String svg = figure(List.of(), alike).draw(Medium.PAGE).get(0).svg();
      assertFalse(svg.contains(">99.99"), () -> "at " + share + ": " + svg);
      assertFalse(svg.contains(">0.00"), () -> "at " + share + ": " + svg);
      String end = share < 0.1 ? ">20<" : share > 0.9 ? ">80<" : ">60<";
      assertTrue(svg.contains(end), () -> "at " + share + ": " + svg);
    }
  }
}
