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

  private static final String[][] METHODS = {
    {"bone-transport", "Bone transport", "ring", "#2128D2"},
    {"induced-membrane", "Induced membrane", "square", "#8A5A00"},
    {"acute-shortening-lengthening", "Shorten, lengthen", "chevron", "#1E6FA8"},
    {"vascularised-flap", "Vascularised flap", "triangle", "#5B1E8C"},
    {"metal-cage", "Metal cage", "barred-square", "#3F4A56"},
    {"allograft", "Structural allograft", "bar", "#7A3B12"},
    {"mixed-salvage", "Mixed salvage", "disc", "#5A5F66"}
  };

  private static Bubble.Point point(int i, double length, double value, double half) {
    String[] method = METHODS[i % METHODS.length];
    return new Bubble.Point(
        "Invented series " + i,
        new MethodMark(method[0], method[1], method[2], method[3]),
        length,
        Optional.of(new Limits(Math.max(0.5, length - 2.5), length + 4)),
        "range",
        value,
        Optional.of(new Limits(value - half, value + half / 4)),
        OptionalDouble.of(10 + i),
        OptionalDouble.of(5 + 3 * i),
        "");
  }

  private static FigureProvenance provenance(int series) {
    return new FigureProvenance(
        SeriesCount.of(series),
        "96 limbs",
        "random effects, logit scale, limits by Knapp and Hartung",
        "test",
        Optional.empty(),
        true);
  }

  private static final AxisWords UNITED =
      new AxisWords("limbs united, of 100", "", "better for patients", List.of());

  /** Six series in which all but one unite, so that marks lie at the top, with a wide band. */
  public static Bubble allUnited() {
    List<Bubble.Point> points =
        IntStream.range(0, 7)
            .mapToObj(i -> point(i, i == 6 ? 10.7 : 5.8 + 0.6 * i, i == 6 ? .91 : 1, 0))
            .toList();
    List<Bubble.At> curve =
        IntStream.range(0, 19)
            .mapToObj(
                i -> {
                  double length = 3.8 + i * 0.5;
                  double value = 0.985 - 0.0012 * i * i / 3;
                  return new Bubble.At(
                      length,
                      value,
                      new Limits(value - 0.02 - 0.0004 * i * i, Math.min(1, value + 0.01)),
                      Optional.of(
                          new Limits(0.85 - 0.004 * (i - 8) * (i - 8), Math.min(1, value + 0.014))),
                      length < 5.8 || length > 10.7);
                })
            .toList();
    return new Bubble(
        "Union, as the paper counts it, by length of missing bone",
        List.of(
            "Union falls by about 1 of 100 for each further cm. Chance alone hardly explains it;"
                + " other differences between the series may.",
            "On average 97 of 100 (95 to 99) where series have a mean of 5.8 cm and 93 of 100 (86"
                + " to 96) where series have a mean of 10.7 cm."),
        Quantity.of100(),
        UNITED,
        points,
        curve,
        List.of(
            "The line runs through averages of series, not through patients: it cannot say that a"
                + " patient with a longer defect does worse, for series differ in other ways too.",
            "Fewer than 10 series: a line through so few is easily due to chance or to one.",
            "Supports a discussion, not advice. Licensed surgeons and local protocols decide."),
        provenance(7));
  }

  /** One series, through which no line runs. */
  public static Bubble oneSeries() {
    return new Bubble(
        "Union by length of missing bone",
        List.of("No line is drawn through fewer than three series."),
        Quantity.of100(),
        UNITED,
        List.of(point(0, 6.2, .86, .2)),
        List.of(),
        List.of("Supports a discussion, not advice."),
        provenance(1));
  }

  /** Months by seven methods, patients one by one among them, a line that leaves the data. */
  public static Bubble monthsByManyMethods() {
    List<Bubble.Point> points =
        IntStream.range(0, 14)
            .mapToObj(i -> point(i, 3 + 0.7 * i, 6 + 0.9 * i + (i % 3) * 2, 3))
            .toList();
    List<Bubble.At> curve =
        IntStream.range(0, 16)
            .mapToObj(
                i ->
                    new Bubble.At(
                        1 + i,
                        5 + 1.2 * i,
                        new Limits(3 + 1.1 * i, 7 + 1.4 * i),
                        Optional.of(new Limits(0.5 + i, 10 + 1.6 * i)),
                        i < 2 || i > 11))
            .toList();
    List<BubblePatient> patients =
        IntStream.range(0, 12)
            .mapToObj(
                i ->
                    new BubblePatient(
                        "Invented series 0", points.get(0).kind(), 2 + i, 4 + 1.3 * i))
            .toList();
    return new Bubble(
        "Months to union by length of missing bone",
        List.of("Each further cm goes with about 1.2 months more."),
        Quantity.mean("months"),
        new AxisWords("months", "better for patients", "", List.of()),
        points,
        curve,
        patients,
        List.of("Supports a discussion, not advice."),
        provenance(14));
  }
}
