package gapwise.figure.network;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Paragraph;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.drawing.Style;
import gapwise.figure.page.FieldPage;
import java.util.ArrayList;
import java.util.List;

/** Draws a network graph: treatments round an oval, a line for each pair that studies compare. */
public final class NetworkGraphDrawing {
  private NetworkGraphDrawing() {}

  /** Draws a graph; where it is narrow, treatments have letters that are told below. */
  public static Picture draw(NetworkGraph graph, Setting setting) {
    Style style = setting.style(graph.nodes().size());
    return new FieldPage(graph, graph.sentences(), style, new Content(graph)).draw();
  }

  private record Content(NetworkGraph graph) implements FieldPage.Content {
    @Override
    public PagePart plot(Style style, double fieldHeight) {
      return NetworkOval.of(graph, style, fieldHeight);
    }

    @Override
    public List<PagePart> key(Style style) {
      double small = style.type().small();
      List<PagePart> parts = new ArrayList<>();
      if (style.sheet().stacked()) {
        for (int i = 0; i < graph.nodes().size(); i++) {
          NetworkGraph.Node node = graph.nodes().get(i);
          String words = NetworkOval.letter(i) + "  " + node.title();
          parts.add(line(style, words, style.text(), small * 0.2));
        }
      }
      parts.add(line(style, words(graph), style.small(), small * 0.4));
      return parts;
    }

    @Override
    public double wished(Style style) {
      return NetworkOval.usualHeight(graph, style);
    }

    @Override
    public double least(Style style) {
      return NetworkOval.leastHeight(graph, style);
    }
  }

  private static PagePart line(Style style, String text, Lettering lettering, double before) {
    Style.Sheet sheet = style.sheet();
    return Paragraph.of(text, sheet.margin(), sheet.room(), lettering, before);
  }

  private static String words(NetworkGraph graph) {
    return say(graph.knowsPatients() ? "figure.circles-of-patients" : "figure.circles-of-studies");
  }
}
