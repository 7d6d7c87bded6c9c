package gapwise.figure.network;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.Part;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * The oval of treatments with their lines and words. On a narrow screen a treatment has a letter
 * only, whose words are listed below.
 */
record NetworkOval(NetworkGraph graph, Style style, double labelRoom, double across, double upright)
    implements Part {
  private static final double LEADING = 1.3;
  private static final double THINNEST = 1.4;
  private static final double THICKEST = 8;
  private static final double THICKEST_STACKED = 5;
  private static final double LEAST_RADIUS = 4;

  /** On an upright page a wider oval would only push the words apart. */
  private static final double MOST_ACROSS = 210;

  /** Steps from the middle of a line at which its number may stand, to either side. */
  private static final int STEPS = 24;

  private static final double STEP = 0.0155;

  /** A treatment's place. */
  private record Spot(double x, double y, double radius, double cosine, double sine) {}

  private record Box(double left, double top, double right, double bottom) {
    static Box round(double x, double y, double wide, double tall) {
      return new Box(x - wide, y - tall, x + wide, y + tall);
    }

    boolean overlaps(Box other) {
      return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }

    /** Whether the stretch from one spot to another passes through. */
    boolean isCrossed(Spot one, Spot other) {
      double[] across = shares(one.x(), other.x(), left, right);
      double[] down = shares(one.y(), other.y(), top, bottom);
      return Math.max(across[0], down[0]) <= Math.min(across[1], down[1]);
    }

    /** The first and last share of the way, from 0 to 1, at which one coordinate is within. */
    private static double[] shares(double from, double to, double least, double most) {
      if (from == to) {
        boolean within = least <= from && from <= most;
        return within ? new double[] {0, 1} : new double[] {1, 0};
      }
      double one = (least - from) / (to - from);
      double other = (most - from) / (to - from);
      return new double[] {Math.max(0, Math.min(one, other)), Math.min(1, Math.max(one, other))};
    }
  }

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

  private Map<String, Spot> spots(double top) {
    double most = graph.nodes().stream().mapToDouble(this::size).reduce(0, Math::max);
    Map<String, Spot> spots = new HashMap<>();
    int count = graph.nodes().size();
    for (int i = 0; i < count; i++) {
      NetworkGraph.Node node = graph.nodes().get(i);
      double angle = 2 * Math.PI * i / count - Math.PI / 2;
      double share = most == 0 ? 0 : size(node) / most;
      spots.put(
          node.treatment(),
          new Spot(
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
    Map<String, Spot> spots = spots(top);
    double thickest = style.sheet().stacked() ? THICKEST_STACKED : THICKEST;
    int most = graph.edges().stream().mapToInt(NetworkGraph.Edge::studies).max().orElse(1);
    for (NetworkGraph.Edge edge : graph.edges()) {
      Spot one = spots.get(edge.one());
      Spot other = spots.get(edge.other());
      double width =
          THINNEST + (thickest - THINNEST) * (edge.studies() - 1) / Math.max(1, most - 1);
      svg.line(one.x(), one.y(), other.x(), other.y(), Ink.BONE_GREY, width);
    }
    numbers(svg, spots);
    for (NetworkGraph.Node node : graph.nodes()) {
      circle(svg, node, spots.get(node.treatment()));
    }
  }

  private void numbers(Svg svg, Map<String, Spot> spots) {
    List<Box> taken = new ArrayList<>();
    for (Spot spot : spots.values()) {
      double r = spot.radius() + 2;
      taken.add(new Box(spot.x() - r, spot.y() - r, spot.x() + r, spot.y() + r));
    }
    for (NetworkGraph.Edge edge : graph.edges()) {
      String number = Integer.toString(edge.studies());
      Lettering lettering = Lettering.bold(style.type().small());
      double wide = lettering.width(number) / 2 + 2.5;
      double tall = lettering.size() * 0.56;
      Box box = place(edge, spots, wide, tall, taken);
      taken.add(box);
      svg.rect(box.left(), box.top(), 2 * wide, 2 * tall, Ink.GROUND);
      double baseline = (box.top() + box.bottom()) / 2 + lettering.middleToBaseline();
      svg.text((box.left() + box.right()) / 2, baseline, Svg.Anchor.MIDDLE, lettering, number);
    }
  }

  /** Where the number of a line stands: near its middle, off other lines if that can be. */
  private Box place(
      NetworkGraph.Edge edge, Map<String, Spot> spots, double wide, double tall, List<Box> taken) {
    Spot one = spots.get(edge.one());
    Spot other = spots.get(edge.other());
    List<Box> along =
        IntStream.rangeClosed(0, 2 * STEPS)
            .mapToDouble(i -> 0.5 + (i % 2 == 0 ? -1 : 1) * ((i + 1) / 2) * STEP)
            .mapToObj(
                share ->
                    Box.round(
                        one.x() + share * (other.x() - one.x()),
                        one.y() + share * (other.y() - one.y()),
                        wide,
                        tall))
            .toList();
    List<Box> free = along.stream().filter(box -> taken.stream().noneMatch(box::overlaps)).toList();
    return free.stream()
        .filter(box -> !onOtherLine(box, edge, spots))
        .findFirst()
        .or(() -> free.stream().findFirst())
        .orElse(along.get(0));
  }

  /** Whether another line runs through the box, so that its number could be read as that line's. */
  private boolean onOtherLine(Box box, NetworkGraph.Edge own, Map<String, Spot> spots) {
    return graph.edges().stream()
        .filter(edge -> !edge.equals(own))
        .anyMatch(edge -> box.isCrossed(spots.get(edge.one()), spots.get(edge.other())));
  }

  private void circle(Svg svg, NetworkGraph.Node node, Spot spot) {
    double r = spot.radius();
    svg.open("g", "data-part", "treatment");
    svg.element("title", node.treatment() + ": " + node.words());
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

  private void words(Svg svg, NetworkGraph.Node node, Spot spot) {
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
