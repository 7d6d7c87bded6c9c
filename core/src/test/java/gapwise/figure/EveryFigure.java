package gapwise.figure;

import gapwise.figure.bubble.InventedBubbles;
import gapwise.figure.curve.CurveFigure;
import gapwise.figure.curve.InventedCurves;
import gapwise.figure.flow.InventedFlows;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.InventedForests;
import gapwise.figure.funnel.Funnel;
import gapwise.figure.funnel.InventedFunnels;
import gapwise.figure.network.InventedNetworks;
import gapwise.figure.network.NetworkGraph;
import gapwise.figure.plane.InventedPlanes;
import gapwise.figure.ranks.InventedRanks;
import gapwise.figure.timeline.InventedTimelines;
import gapwise.figure.timeline.Timeline;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** One invented figure of each kind, all from the same invented studies. */
public final class EveryFigure {
  public static final List<Reference> REFERENCES =
      List.of(
          new Reference(
              "study-1",
              "Sedge A; Rill, Bea. First invented series. Journal Nowhere. 2019;4(2):11\u201319",
              "First invented series",
              List.of(
                  new Reference.Author("Sedge", "A", ""), new Reference.Author("Rill", "Bea", "")),
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
              List.of(new Reference.Author("Fen", "C", "")),
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
    Forest forest = InventedForests.twoMethods();
    figures.put("forest", InventedForests.from(forest, forest.provenance().citing(REFERENCES)));
    figures.put("bubble", InventedBubbles.nineSeries(REFERENCES));
    NetworkGraph graph = InventedNetworks.complete(6);
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
    CurveFigure curves = InventedCurves.figure(true);
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
    Timeline timeline = InventedTimelines.oneCase();
    figures.put(
        "timeline",
        new Timeline(
            timeline.title(),
            timeline.sentences(),
            timeline.tracks(),
            timeline.cautions(),
            timeline.provenance().citing(REFERENCES)));
    figures.put("plane", InventedPlanes.plane(3, REFERENCES));
    figures.put("acceptability", InventedPlanes.acceptability(3, REFERENCES));
    figures.put("ranks", InventedRanks.of(4, REFERENCES));
    figures.put("flow", InventedFlows.usual(REFERENCES));
    return figures;
  }
}
