package gapwise.figure;

import gapwise.figure.bubble.Bubble;
import gapwise.figure.curve.CurveDrawingTest;
import gapwise.figure.curve.CurveFigure;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.InventedFigures;
import gapwise.figure.funnel.Funnel;
import gapwise.figure.funnel.InventedFunnels;
import gapwise.figure.network.NetworkGraph;
import gapwise.figure.network.NetworkGraphTest;
import gapwise.figure.timeline.Timeline;
import gapwise.figure.timeline.TimelineDrawingTest;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Measure;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** One invented figure of each kind, all from the same invented studies. */
public final class EveryFigure {
  public static final List<Reference> REFERENCES =
      List.of(
          new Reference(
              "study-1",
              "Sedge A; Rill, Bea. First invented series. Journal Nowhere. 2019;4(2):11\u201319",
              "First invented series",
              List.of("Sedge A", "Rill, Bea"),
              OptionalInt.of(2019),
              "Journal Nowhere",
              "4",
              "2",
              "11\u201319",
              "10.0000/nowhere.1",
              "",
              true),
          new Reference(
              "study-2",
              "Fen C. Second & third <series>",
              "Second & third <series>",
              List.of("Fen C"),
              OptionalInt.empty(),
              "",
              "",
              "",
              "",
              "",
              "",
              true));

  private EveryFigure() {}

  public static Map<String, Figure> byName() {
    Map<String, Figure> figures = new LinkedHashMap<>();
    Forest forest = InventedFigures.twoMethods();
    figures.put("forest", InventedFigures.from(forest, forest.provenance().citing(REFERENCES)));
    figures.put("bubble", bubble());
    NetworkGraph graph = NetworkGraphTest.complete(6);
    figures.put(
        "network",
        new NetworkGraph(
            graph.title(),
            graph.sentences(),
            graph.nodes(),
            graph.edges(),
            graph.cautions(),
            graph.provenance().citing(REFERENCES)));
    Funnel funnel = InventedFunnels.ratios();
    figures.put(
        "funnel",
        new Funnel(
            funnel.title(),
            funnel.sentences(),
            funnel.axis(),
            funnel.scale(),
            funnel.points(),
            funnel.centre(),
            funnel.contours(),
            funnel.imagined(),
            funnel.cautions(),
            funnel.provenance().citing(REFERENCES)));
    CurveFigure curves = CurveDrawingTest.figure(true);
    figures.put(
        "curves",
        new CurveFigure(
            curves.title(),
            curves.sentences(),
            curves.rising(),
            curves.value(),
            curves.time(),
            curves.curves(),
            curves.cautions(),
            curves.provenance().citing(REFERENCES)));
    Timeline timeline = TimelineDrawingTest.invented();
    figures.put(
        "timeline",
        new Timeline(
            timeline.title(),
            timeline.sentences(),
            timeline.tracks(),
            timeline.cautions(),
            timeline.provenance().citing(REFERENCES)));
    return figures;
  }

  private static Bubble bubble() {
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
        Measure.of100(),
        new AxisWords("limbs united, of 100", "", "better for patients", List.of()),
        points,
        curve,
        List.of(caution, "One: " + caution, "Two: " + caution, "Three: " + caution),
        new Provenance(9, "144 limbs", "random effects", "test", Optional.empty(), true)
            .citing(REFERENCES));
  }
}
