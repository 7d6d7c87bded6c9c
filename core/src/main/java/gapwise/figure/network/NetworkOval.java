package gapwise.figure.network;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * The oval of treatments with their lines and words. On a narrow screen a treatment has a letter
 * only, whose words are listed below.
 */
record NetworkOval(NetworkGraph graph, Style style, double labelRoom, double across, double upright)
    implements PagePart {
  private static final double LEADING = 1.3;
  private static final double THINNEST = 1.4;
  private static final double THICKEST = 8;
  private static final double THICKEST_STACKED = 5;
  private static final double LEAST_RADIUS = 4;

  /** On an upright page a wider oval would only push the words apart. */
  private static final double MOST_ACROSS = 210;

  /**
   * The oval.
   *
   * @param height of the oval itself, without the words above and below it
   */
  static NetworkOval of(NetworkGraph graph, Style style, double height) {
    return new NetworkOval(graph, style, labelRoom(graph, style), across(graph, style), height / 2);
  }

  private static double across(NetworkGraph graph, Style style) {
    double most = style.sheet().landscape() ? Double.POSITIVE_INFINITY : MOST_ACROSS;
    double free = style.sheet().room() / 2 - labelRoom(graph, style) - 2 * greatest(style);
    return Math.min(free, most);
  }

  private static double labelRoom(NetworkGraph graph, Style style) {
    double widest = 0;
    for (NetworkGraph.Node node : graph.nodes()) {
      widest = Math.max(widest, style.bold().width(node.treatment()));
      widest = Math.max(widest, style.small().width(node.words()));
    }
    return style.sheet().stacked()
        ? 1.4 * style.type().text()
        : Math.min(widest, 0.3 * style.sheet().room());
  }

  /** Height of the oval where there is room. */
  static double usualHeight(NetworkGraph graph, Style style) {
    return Math.max(1.6 * across(graph, style), heightForWords(graph, style));
  }

  /** Height of the oval below which the words at its sides would touch. */
  static double leastHeight(NetworkGraph graph, Style style) {
    return Math.max(0.9 * across(graph, style), heightForWords(graph, style));
  }

  private static double heightForWords(NetworkGraph graph, Style style) {
    return graph.nodes().size() * 1.8 * style.type().text() * LEADING;
  }

  private static double greatest(Style style) {
    return style.sheet().stacked() ? 15 : 24;
  }

  /** The letter of a treatment by its place: A to Z, then A1, B1, ... */
  static String letter(int place) {
    String letter = String.valueOf((char) ('A' + place % 26));
    return place < 26 ? letter : letter + place / 26;
  }

  private List<String> label(NetworkGraph.Node node) {
    return style.sheet().stacked()
        ? List.of(letter(graph.nodes().indexOf(node)))
        : TextMeasure.wrap(node.treatment(), style.bold(), labelRoom);
  }

  private List<String> below(NetworkGraph.Node node) {
    return style.sheet().stacked()
        ? List.of()
        : TextMeasure.wrap(node.words(), style.small(), labelRoom);
  }

  private double labelHeight(NetworkGraph.Node node) {
    return label(node).size() * style.type().text() * LEADING
        + below(node).size() * style.type().small() * LEADING;
  }

  private double tallestLabel() {
    return graph.nodes().stream().mapToDouble(this::labelHeight).max().orElse(0);
  }

  @Override
  public double height() {
    return 2 * (upright + greatest(style) + tallestLabel() + style.type().text());
  }

  private Map<String, NetworkSpot> spots(double top) {
    double most = graph.nodes().stream().mapToDouble(this::size).reduce(0, Math::max);
    Map<String, NetworkSpot> spots = new HashMap<>();
    int count = graph.nodes().size();
    for (int i = 0; i < count; i++) {
      NetworkGraph.Node node = graph.nodes().get(i);
      double angle = 2 * Math.PI * i / count - Math.PI / 2;
      double share = most == 0 ? 0 : size(node) / most;
      spots.put(
          node.treatment(),
          new NetworkSpot(
              style.sheet().width() / 2 + across * Math.cos(angle),
              top + height() / 2 + upright * Math.sin(angle),
              Math.max(LEAST_RADIUS, greatest(style) * Math.sqrt(share)),
              Math.cos(angle),
              Math.sin(angle)));
    }
    return spots;
  }

  private double size(NetworkGraph.Node node) {
    return graph.knowsPatients() ? node.patients().orElse(0) : node.studies();
  }

  @Override
  public void draw(Svg svg, double top) {
    Map<String, NetworkSpot> spots = spots(top);
    double thickest = style.sheet().stacked() ? THICKEST_STACKED : THICKEST;
    int most = graph.edges().stream().mapToInt(NetworkGraph.Edge::studies).max().orElse(1);
    for (NetworkGraph.Edge edge : graph.edges()) {
      NetworkSpot one = spot(spots, edge.one());
      NetworkSpot other = spot(spots, edge.other());
      double width =
          THINNEST + (thickest - THINNEST) * (edge.studies() - 1) / Math.max(1, most - 1);
      svg.line(one.x(), one.y(), other.x(), other.y(), Ink.BONE_GREY, width);
    }
    new LineNumbers(graph.edges(), spots, Lettering.bold(style.type().small())).draw(svg);
    for (NetworkGraph.Node node : graph.nodes()) {
      circle(svg, node, spot(spots, node.treatment()));
    }
  }

  private static NetworkSpot spot(Map<String, NetworkSpot> spots, String treatment) {
    return Objects.requireNonNull(spots.get(treatment), treatment);
  }

  private void circle(Svg svg, NetworkGraph.Node node, NetworkSpot spot) {
    double r = spot.radius();
    svg.open("g", "data-part", "treatment");
    svg.element("title", node.title());
    String arc = "a" + Svg.n(r) + " " + Svg.n(r) + " 0 1 0 ";
    svg.shape(
        "M"
            + Svg.at(spot.x() - r, spot.y())
            + arc
            + Svg.n(2 * r)
            + " 0"
            + arc
            + Svg.n(-2 * r)
            + " 0Z",
        Ink.BONE,
        Ink.INK,
        1.3,
        "");
    words(svg, node, spot);
    svg.close("g");
  }

  private void words(Svg svg, NetworkGraph.Node node, NetworkSpot spot) {
    boolean middle = Math.abs(spot.cosine()) < 0.3;
    Svg.Anchor anchor =
        middle ? Svg.Anchor.MIDDLE : spot.cosine() > 0 ? Svg.Anchor.START : Svg.Anchor.END;
    double away = spot.radius() + 6;
    double x = middle ? spot.x() : spot.x() + Math.signum(spot.cosine()) * away;
    double height = labelHeight(node);
    double y = spot.y() - height / 2;
    if (middle) {
      y = spot.sine() < 0 ? spot.y() - away - height : spot.y() + away;
    }
    for (String line : label(node)) {
      y += style.type().text() * LEADING;
      svg.text(x, y - style.type().text() * 0.3, anchor, style.bold(), line);
    }
    for (String line : below(node)) {
      y += style.type().small() * LEADING;
      svg.text(x, y - style.type().small() * 0.3, anchor, style.small(), line);
    }
  }
}
