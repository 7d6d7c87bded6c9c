package gapwise.server.page.figure;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.FigureMarks;
import gapwise.desk.FigurePoints;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.trace.Axes;
import gapwise.paper.trace.Axis;
import gapwise.paper.trace.CurveProposal;
import gapwise.paper.trace.DataPoint;
import gapwise.paper.trace.FigureProposal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What the figures of a page seem to show, as things that are taken into the fields at once. */
final class Proposals {
  private static final Pattern CURVE = Pattern.compile("(\\d{1,3})\\.c(\\d{1,3})");
  private static final Pattern POINTS = Pattern.compile("(\\d{1,3})\\.p(\\d{1,3})");
  private static final Pattern AXES = Pattern.compile("(\\d{1,3})");
  private static final Pattern NUMBERED = Pattern.compile("(\\p{L}+\\.? ?\\d{1,2}\\p{L}?)\\b.*");

  /** Corners that lie on the way between others say nothing, points. */
  private static final double THINNED = 0.05;

  private final List<FigureProposal> proposals;

  Proposals(List<FigureProposal> proposals) {
    this.proposals = proposals;
  }

  /** All that may be taken. */
  List<FigureView.Offer> offers() {
    List<FigureView.Offer> offers = new ArrayList<>();
    for (int at = 0; at < proposals.size(); at++) {
      FigureProposal figure = proposals.get(at);
      Map<String, Object> about = about(figure);
      for (int c = 0; c < figure.curves().size(); c++) {
        CurveProposal curve = figure.curves().get(c);
        Map<String, Object> words = new LinkedHashMap<>(about);
        words.put("corners", curve.steps().corners().size());
        offers.add(new FigureView.Offer(at + ".c" + c, offer(curve, words)));
      }
      for (int p = 0; p < figure.points().size(); p++) {
        Map<String, Object> words = new LinkedHashMap<>(about);
        words.put("points", figure.points().get(p).size());
        offers.add(new FigureView.Offer(at + ".p" + p, say("figure.offer-points", words)));
      }
      offers.add(new FigureView.Offer(Integer.toString(at), say("figure.offer-axes", about)));
    }
    return offers;
  }

  private static String offer(CurveProposal curve, Map<String, Object> words) {
    if (curve.label().isEmpty()) {
      return say("figure.offer-curve", words);
    }
    words.put("curve", curve.label());
    return say("figure.offer-named-curve", words);
  }

  private static Map<String, Object> about(FigureProposal figure) {
    return Map.of(
        "figure",
        place(figure).orElse(say("figure.a-figure")),
        "x1",
        FigurePoints.plain(figure.axes().x().first().value()),
        "x2",
        FigurePoints.plain(figure.axes().x().second().value()),
        "y1",
        FigurePoints.plain(figure.axes().y().first().value()),
        "y2",
        FigurePoints.plain(figure.axes().y().second().value()));
  }

  /** What the paper calls the figure, such as "Figure 2". */
  private static Optional<String> place(FigureProposal figure) {
    Matcher numbered = NUMBERED.matcher(figure.caption());
    return numbered.matches() ? Optional.of(numbered.group(1)) : Optional.empty();
  }

  /**
   * What was taken.
   *
   * @param texts for fields
   * @param questions what a person must confirm
   * @param group what the figure calls the group of a curve; empty text where it names none
   */
  record Taken(Map<String, String> texts, List<String> questions, String group) {}

  /** What a proposal of this name gives; empty where there is none. */
  Optional<Taken> taken(String name) {
    Matcher curve = CURVE.matcher(name);
    Matcher points = POINTS.matcher(name);
    Matcher axes = AXES.matcher(name);
    if (curve.matches()) {
      int at = Integer.parseInt(curve.group(2));
      return figure(curve.group(1))
          .filter(figure -> at < figure.curves().size())
          .map(figure -> curve(figure, figure.curves().get(at)));
    }
    if (points.matches()) {
      int at = Integer.parseInt(points.group(2));
      return figure(points.group(1))
          .filter(figure -> at < figure.points().size())
          .map(figure -> points(figure, figure.points().get(at)));
    }
    return axes.matches()
        ? figure(axes.group(1)).map(figure -> new Taken(axes(figure), figure.questions(), ""))
        : Optional.empty();
  }

  private Optional<FigureProposal> figure(String number) {
    int at = Integer.parseInt(number);
    return at < proposals.size() ? Optional.of(proposals.get(at)) : Optional.empty();
  }

  private static Map<String, String> axes(FigureProposal figure) {
    Map<String, String> texts = axes(figure.axes());
    place(figure).ifPresent(place -> texts.put("place", place));
    return texts;
  }

  /** The marks of axes, as their fields hold them. */
  static Map<String, String> axes(Axes axes) {
    Map<String, String> texts = new LinkedHashMap<>();
    axis(texts, "x", axes.x());
    axis(texts, "y", axes.y());
    return texts;
  }

  private static void axis(Map<String, String> texts, String name, Axis axis) {
    texts.put(name + "-scale", axis.scale().name().toLowerCase(Locale.ROOT));
    mark(texts, name + "1", axis.first());
    mark(texts, name + "2", axis.second());
  }

  private static void mark(Map<String, String> texts, String name, Axis.Mark mark) {
    texts.put(name + "-at", hundredths(mark.at().x()) + " " + hundredths(mark.at().y()));
    texts.put(name + "-value", FigurePoints.plain(mark.value()));
  }

  private static double hundredths(double points) {
    return Math.rint(points * 100) / 100;
  }

  private static Taken curve(FigureProposal figure, CurveProposal curve) {
    Map<String, String> texts = axes(figure);
    Axes axes = figure.axes();
    List<Point> corners =
        curve.steps().corners().stream()
            .map(
                corner ->
                    axes.placeOf(
                        new DataPoint(
                            corner.x(), curve.steps().rises() ? 1 - corner.y() : corner.y())))
            .toList();
    texts.put("kind", FigureFields.CURVE);
    texts.put("shows", curve.steps().rises() ? "with-event" : "without-event");
    texts.put("points", lines(axes, thinned(corners)));
    figure.unit().ifPresent(unit -> texts.put("unit", unit));
    texts.put(
        "strokes",
        curve.seenLast().stream().map(TypedTexts::number).collect(Collectors.joining(" ")));
    curve
        .atRisk()
        .ifPresent(
            row -> {
              texts.put("risk", TypedTexts.risk(row));
              if (row.times().get(0) == 0) {
                texts.put("patients", Integer.toString(row.patients().get(0)));
              }
            });
    List<String> questions = new ArrayList<>(figure.questions());
    questions.addAll(curve.questions());
    return new Taken(texts, questions, curve.label());
  }

  /** Only a curve with too many corners loses some, for each may be a patient. */
  private static List<Point> thinned(List<Point> corners) {
    return corners.size() > FigureMarks.MOST_POINTS
        ? FigurePoints.thinned(corners, THINNED)
        : corners;
  }

  private static Taken points(FigureProposal figure, List<DataPoint> points) {
    Map<String, String> texts = axes(figure);
    texts.put("kind", FigureFields.SCATTER);
    texts.put(
        "points",
        points.stream()
            .map(point -> TypedTexts.point(FigurePoints.printed(figure.axes(), point)))
            .collect(Collectors.joining("\n")));
    return new Taken(texts, figure.questions(), "");
  }

  /** Places as the field of points holds them: their numbers, two a line. */
  static String lines(Axes axes, List<Point> places) {
    return places.stream()
        .map(place -> TypedTexts.point(FigurePoints.printed(axes, axes.at(place))))
        .collect(Collectors.joining("\n"));
  }
}
