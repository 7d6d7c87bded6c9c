package gapwise.figure.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.DrawnSvg;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The graph of a network: everything inside, nothing over another, words for those who listen. */
class NetworkGraphTest {
  @ParameterizedTest
  @ValueSource(ints = {2, 3, 4, 5, 6, 8})
  void wordsAndNumbersStandInsideAndApartInEveryWidth(int treatments) {
    for (Medium medium : Medium.values()) {
      Picture picture = InventedNetworks.complete(treatments).draw(medium).get(0);
      List<DrawnSvg.Letters> letters = DrawnSvg.of(picture).letters();
      for (int i = 0; i < letters.size(); i++) {
        DrawnSvg.Letters one = letters.get(i);
        assertTrue(one.left() >= 0 && one.right() <= picture.width(), one.toString());
        assertTrue(one.top() >= 0 && one.bottom() <= picture.height(), one.toString());
        for (DrawnSvg.Letters other : letters.subList(0, i)) {
          assertFalse(one.overlaps(other), medium + ": " + one + " over " + other);
        }
      }
    }
  }

  @Test
  void aNumberStandsOnItsOwnLineAloneWhereLinesCross() {
    List<NetworkGraph.Node> nodes = InventedNetworks.complete(4).nodes();
    List<NetworkGraph.Edge> cross =
        List.of(
            new NetworkGraph.Edge(nodes.get(0).treatment(), nodes.get(2).treatment(), 7),
            new NetworkGraph.Edge(nodes.get(1).treatment(), nodes.get(3).treatment(), 9));
    NetworkGraph graph =
        new NetworkGraph(
            "x", List.of(), nodes, cross, List.of(), InventedNetworks.complete(4).provenance());
    for (Medium medium : Medium.values()) {
      DrawnSvg drawn = DrawnSvg.of(graph.draw(medium).get(0));
      // The lines are the upright and the level axis of the oval.
      DrawnSvg.Letters upright = letters(drawn, "7");
      DrawnSvg.Letters level = letters(drawn, "9");
      double y = DrawnSvg.number(drawn.all("line").get(1), "y1");
      double x = DrawnSvg.number(drawn.all("line").get(0), "x1");
      assertTrue(upright.bottom() < y || y < upright.top(), medium + ": " + upright + ", " + y);
      assertTrue(level.right() < x || x < level.left(), medium + ": " + level + ", " + x);
    }
  }

  private static DrawnSvg.Letters letters(DrawnSvg drawn, String text) {
    return drawn.letters().stream()
        .filter(one -> one.text().equals(text))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void everyPairHasItsLineAndItsNumberAndThickerMeansMore() {
    NetworkGraph graph = InventedNetworks.complete(4);
    DrawnSvg drawn = DrawnSvg.of(graph.draw(Medium.PAGE).get(0));
    assertEquals(6, drawn.all("line").size());
    for (int i = 0; i < 6; i++) {
      for (int j = 0; j < 6; j++) {
        if (graph.edges().get(i).studies() > graph.edges().get(j).studies()) {
          assertTrue(
              DrawnSvg.number(drawn.all("line").get(i), "stroke-width")
                  > DrawnSvg.number(drawn.all("line").get(j), "stroke-width"));
        }
      }
    }
    for (NetworkGraph.Edge edge : graph.edges()) {
      assertTrue(
          drawn.letters().stream()
              .anyMatch(one -> one.text().equals(Integer.toString(edge.studies()))));
    }
  }

  @Test
  void aListenerHearsTreatmentsPairsCautionsAndThatDataAreInvented() {
    DrawnSvg drawn = DrawnSvg.of(InventedNetworks.complete(3).draw(Medium.PHONE).get(0));
    assertEquals("Which methods studies compare", drawn.all("title").get(0).getTextContent());
    String told = drawn.all("desc").get(0).getTextContent();
    assertTrue(told.contains("External frame: 20 patients, 2 studies."), told);
    assertTrue(told.contains("External frame against Frame over a nail: 6 studies."), told);
    assertTrue(told.contains(FigureProvenance.INVENTED) && told.contains("no proof"), told);
  }

  @Test
  void theTableHoldsTreatmentsThenPairs() {
    String csv = NetworkGraphTable.of(InventedNetworks.complete(2)).csv();
    assertEquals(
        List.of(
            "treatment,against,patients,studies,",
            "External frame,,20,2,",
            "Frame over a nail,,65,3,",
            "External frame,Frame over a nail,,6,"),
        csv.lines().map(line -> line.replaceFirst("^((?:[^,]*,){4}).*", "$1")).toList());
    assertTrue(csv.contains(",402 patients,"), csv);
  }

  @Test
  void whatIsNoGraphIsRefused() {
    NetworkGraph good = InventedNetworks.complete(2);
    List<NetworkGraph.Edge> stray =
        List.of(new NetworkGraph.Edge("External frame", "Elsewhere", 1));
    assertThrows(
        IllegalArgumentException.class,
        () -> new NetworkGraph("x", List.of(), good.nodes(), stray, List.of(), good.provenance()));
    assertThrows(IllegalArgumentException.class, () -> new NetworkGraph.Edge("a", "a", 1));
    assertThrows(
        IllegalArgumentException.class,
        () -> new NetworkGraph.Node("a", OptionalDouble.of(Double.NaN), 1));
  }
}
