package gapwise.figure.network;

import gapwise.figure.FigureProvenance;
import gapwise.figure.value.SeriesCount;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Networks for tests. Every number in them is invented. */
public final class InventedNetworks {
  static final List<String> METHODS =
      List.of(
          "External frame",
          "Frame over a nail",
          "Induced membrane with graft",
          "Vascularised fibula",
          "Plate-assisted transport",
          "Acute shortening",
          "Cage and graft",
          "Bone transport by nail");

  private InventedNetworks() {}

  /** Every pair of the treatments, with numbers from 1 to 12; invented. */
  public static NetworkGraph complete(int treatments) {
    List<NetworkGraph.Node> nodes = new ArrayList<>();
    List<NetworkGraph.Edge> edges = new ArrayList<>();
    for (int i = 0; i < treatments; i++) {
      nodes.add(new NetworkGraph.Node(METHODS.get(i), OptionalDouble.of(20 + 45 * i % 130), 2 + i));
      for (int j = 0; j < i; j++) {
        edges.add(new NetworkGraph.Edge(METHODS.get(j), METHODS.get(i), 1 + (5 * i + 3 * j) % 12));
      }
    }
    return new NetworkGraph(
        "Which methods studies compare",
        List.of("Nine studies compare " + treatments + " methods."),
        nodes,
        edges,
        List.of("Surgeons choose a method by defect and patient; a line is no proof of likeness."),
        new FigureProvenance(SeriesCount.of(9), "402 patients", "", "", Optional.empty(), true));
  }
}
