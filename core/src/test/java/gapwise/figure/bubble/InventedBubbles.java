package gapwise.figure.bubble;

import gapwise.figure.FigureProvenance;
import gapwise.figure.Reference;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.SeriesCount;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** Outcomes over length for tests. Every name and number in them is invented. */
public final class InventedBubbles {
  private InventedBubbles() {}

  /** Union that falls with length, its line a little beyond the data at both ends. */
  public static Bubble nineSeries(List<Reference> references) {
    MethodMark ring = new MethodMark("bone-transport", "Bone transport", "ring", "#2128D2");
    List<Bubble.Point> points =
        IntStream.range(0, 9)
            .mapToObj(
                i ->
                    new Bubble.Point(
                        "Invented " + i,
                        ring,
                        3 + i,
                        Optional.of(new Limits(2 + i, 5 + i)),
                        "range",
                        0.95 - 0.03 * i,
                        Optional.of(new Limits(0.7 - 0.03 * i, 0.98 - 0.02 * i)),
                        OptionalDouble.of(12 + i),
                        OptionalDouble.of(11),
                        "An invented series"))
            .toList();
    List<Bubble.At> curve =
        IntStream.range(0, 12)
            .mapToObj(
                i ->
                    new Bubble.At(
                        1 + i,
                        0.95 - 0.025 * i,
                        new Limits(0.85 - 0.025 * i, 0.99 - 0.02 * i),
                        Optional.empty(),
                        i < 2 || i > 10))
            .toList();
    String caution =
        "The line runs through averages of series and not through patients, so it cannot say that"
            + " somebody with a longer defect does worse; series differ in other ways too.";
    return new Bubble(
        "Union by length of missing bone",
        List.of("Union falls by about 3 of 100 for each further cm.", "Invented numbers."),
        Quantity.of100(),
        new AxisWords("limbs united, of 100", "", "better for patients", List.of()),
        points,
        curve,
        List.of(caution, "One: " + caution, "Two: " + caution, "Three: " + caution),
        new FigureProvenance(
                SeriesCount.of(9), "144 limbs", "random effects", "test", Optional.empty(), true)
            .citing(references));
  }
}
