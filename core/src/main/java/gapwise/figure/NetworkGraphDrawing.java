package gapwise.figure;

import java.util.ArrayList;
import java.util.List;

/** Draws a network graph: treatments round an oval, a line for each pair that studies compare. */
public final class NetworkGraphDrawing {
  private NetworkGraphDrawing() {}

  /**
   * Draws a graph.
   *
   * @param medium a page or a slide is drawn wide, a phone narrow; one drawing, as tall as it needs
   */
  public static Picture draw(NetworkGraph graph, Medium medium) {
    Style style = medium.style(graph.nodes().size());
    List<Part> parts = new ArrayList<>();
    parts.add(line(style, graph.title(), Lettering.bold(style.type().title()), 0));
    Lettering sentence = Lettering.plain(style.type().sentence()).in(Ink.SOFT);
    double before = style.type().sentence() * 0.35;
    graph.sentences().forEach(words -> parts.add(line(style, words, sentence, before)));
    parts.add(NetworkOval.of(graph, style));
    double small = style.type().small();
    if (style.sheet().stacked()) {
      for (int i = 0; i < graph.nodes().size(); i++) {
        NetworkGraph.Node node = graph.nodes().get(i);
        String words = NetworkOval.letter(i) + "  " + node.treatment() + ": " + node.words();
        parts.add(line(style, words, style.text(), small * 0.2));
      }
    }
    parts.add(line(style, key(graph), style.small(), small * 0.4));
    if (graph.provenance().demonstration()) {
      parts.add(line(style, Provenance.INVENTED, style.bold(), small * 0.7));
    }
    Lettering caution = Lettering.plain(small + 0.5);
    Style.Sheet sheet = style.sheet();
    graph
        .cautions()
        .forEach(
            words -> parts.add(Paragraph.caution(words, sheet.margin(), sheet.room(), caution)));
    String provenance = String.join(" \u00b7 ", graph.provenance().phrases());
    parts.add(line(style, provenance, style.small(), small * 0.6));
    return painted(graph, style, parts);
  }

  private static Picture painted(NetworkGraph graph, Style style, List<Part> parts) {
    Style.Sheet sheet = style.sheet();
    double height = 2 * sheet.margin() + parts.stream().mapToDouble(Part::height).sum();
    Svg svg = new Svg().begin(sheet.width(), height, sheet.unit(), "img", graph.title());
    svg.element("desc", graph.description());
    svg.rect(0, 0, sheet.width(), height, Ink.GROUND);
    double top = sheet.margin();
    for (Part part : parts) {
      part.draw(svg, top);
      top += part.height();
    }
    return new Picture(svg.end(), sheet.width(), height);
  }

  private static Part line(Style style, String text, Lettering lettering, double before) {
    Style.Sheet sheet = style.sheet();
    return Paragraph.of(text, sheet.margin(), sheet.room(), lettering, before);
  }

  private static String key(NetworkGraph graph) {
    return "The area of a circle grows with its "
        + (graph.knowsPatients() ? "patients" : "studies")
        + ". A line joins two treatments that studies compare; the number on it says how many"
        + " studies, and it is thicker for more. No line: no study compares the two.";
  }
}
