package gapwise.figure.funnel;

import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.value.SeriesCount;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** Funnels for tests. Every name and number in them is invented. */
public final class InventedFunnels {
  private static final List<String> CAUTIONS =
      List.of(
          "An uneven funnel has many causes; an even one does not show that nothing is missing.",
          "Supports a discussion, not advice. Licensed surgeons and local protocols decide.");

  private InventedFunnels() {}

  private static FigureProvenance provenance(int series) {
    return new FigureProvenance(
        SeriesCount.of(series),
        "",
        "random effects on the log scale, Hartung-Knapp interval",
        "change 412",
        Optional.of(LocalDate.of(2026, 1, 31)),
        true);
  }

  /** Sixteen series whose small ones favour one side, three imagined ones. */
  public static Funnel ratios() {
    double[][] drawn = {
      {-0.32, 0.11}, {-0.41, 0.14}, {-0.28, 0.17}, {-0.52, 0.21}, {-0.21, 0.24}, {-0.66, 0.28},
      {-0.49, 0.31}, {-0.83, 0.36}, {-0.37, 0.39}, {-0.95, 0.44}, {-0.71, 0.47}, {-1.22, 0.52},
      {-0.12, 0.55}, {-1.05, 0.61}, {-1.48, 0.68}, {-1.31, 0.74}
    };
    List<Funnel.Point> points = new ArrayList<>();
    for (double[] one : drawn) {
      points.add(new Funnel.Point("Invented series " + (points.size() + 1), one[0], one[1]));
    }
    return new Funnel(
        "Nonunion after grafting with and without a membrane",
        List.of(
            "On the fitted line the least precise series lies 0.9 below the most precise one, on"
                + " the analysis scale. Results that were never published, weaker methods or other"
                + " patients in small studies, or chance could each give such a pattern; it is no"
                + " proof of any of them."),
        new AxisWords("odds ratio, log axis", "fewer nonunions", "more nonunions", List.of()),
        FunnelScale.LOGARITHM,
        points,
        Optional.of(new Funnel.Centre(-0.46, 0.95, 1.959964)),
        Optional.of(
            new Funnel.Contours(
                0,
                List.of(
                    new Funnel.Contour(0.99, 2.575829),
                    new Funnel.Contour(0.9, 1.644854),
                    new Funnel.Contour(0.95, 1.959964)))),
        List.of(
            new Funnel.Point("Imagined, mirror of Invented series 15", 0.62, 0.68),
            new Funnel.Point("Imagined, mirror of Invented series 16", 0.45, 0.74),
            new Funnel.Point("Imagined, mirror of Invented series 12", 0.36, 0.52)),
        CAUTIONS,
        provenance(16));
  }

  /** Proportions near all: no value of no effect, so no contours. */
  public static Funnel proportions() {
    Random random = new Random(4);
    List<Funnel.Point> points = new ArrayList<>();
    for (int i = 1; i <= 60; i++) {
      double error = 0.3 + 1.2 * random.nextDouble();
      points.add(
          new Funnel.Point("Invented series " + i, 2.2 + error * random.nextGaussian(), error));
    }
    return new Funnel(
        "Limbs united without further grafting",
        List.of(),
        new AxisWords("of 100, logit axis", "fewer united", "more united", List.of()),
        FunnelScale.LOGIT,
        points,
        Optional.of(new Funnel.Centre(2.2, 0.95, 1.959964)),
        Optional.empty(),
        List.of(),
        CAUTIONS,
        provenance(60));
  }

  /** One series, nothing pooled, hostile words. */
  public static Funnel alone() {
    return new Funnel(
        "A & B <title> \"quoted\" with a very long name that no phone can show on one line of text",
        List.of("One series says nothing."),
        new AxisWords(
            "difference in days from one operation to the next, as reported, raw axis",
            "fewer days than the other group of patients had",
            "more days than the other group of patients had",
            List.of()),
        FunnelScale.AS_IS,
        List.of(new Funnel.Point("Invented <series>", 12.5, 0)),
        Optional.empty(),
        Optional.empty(),
        List.of(),
        CAUTIONS,
        provenance(1));
  }

  /** No series at all. */
  public static Funnel empty() {
    Funnel alone = alone();
    return new Funnel(
        "Nothing to show",
        List.of(),
        alone.axis(),
        FunnelScale.LOGARITHM,
        List.of(),
        Optional.empty(),
        Optional.empty(),
        List.of(),
        CAUTIONS,
        provenance(0));
  }
}
