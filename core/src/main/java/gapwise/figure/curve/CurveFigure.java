package gapwise.figure.curve;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.Figure;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.Ticks;
import gapwise.figure.value.Check;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Curves of time to an event as a value: what they say, not how they are drawn. Draw with {@link
 * CurveDrawing}, list with {@link CurveTable}.
 *
 * @param title what is shown: "United, of 100 limbs"
 * @param sentences the result in sentences
 * @param rising whether the share with the event is drawn rather than the share without
 * @param value words at the upright axis
 * @param time words at the time axis, with the unit: "Months since injury"
 * @param curves from one to six, pooled ones last
 * @param cautions what must be known beside the result
 * @param provenance where the numbers come from
 */
public record CurveFigure(
    String title,
    List<String> sentences,
    boolean rising,
    String value,
    String time,
    List<Curve> curves,
    List<String> cautions,
    FigureProvenance provenance)
    implements Figure {
  /** More lines cannot be told apart without colour. */
  public static final int MOST_CURVES = 6;

  private static final int MOST_MARKS = 7;

  public CurveFigure {
    Check.words(title, "title");
    sentences = List.copyOf(sentences);
    Check.words(value, "value");
    Check.words(time, "time");
    curves = List.copyOf(curves);
    cautions = List.copyOf(cautions);
    Objects.requireNonNull(provenance, "provenance");
    if (curves.isEmpty() || curves.size() > MOST_CURVES) {
      throw new IllegalArgumentException(
          "a figure takes 1 to " + MOST_CURVES + " curves, was " + curves.size());
    }
  }

  /** The round times on the axis of a figure whose longest curve ends there, from 0. */
  public static List<Double> marks(double end) {
    return ticks(end).values().stream().map(BigDecimal::doubleValue).toList();
  }

  private static Ticks ticks(double end) {
    return Ticks.linear(0, end > 0 ? end : 1, MOST_MARKS);
  }

  Ticks timeTicks() {
    return ticks(curves.stream().mapToDouble(Curve::end).max().orElseThrow());
  }

  /** Curves whose limits are drawn. */
  List<Curve> withLimits() {
    return curves.stream()
        .filter(curve -> curve.steps().stream().anyMatch(step -> step.limits().isPresent()))
        .toList();
  }

  /** The height at which a share without the event is drawn, 0 to 1. */
  double height(double share) {
    return rising ? 1 - share : share;
  }

  @Override
  public String description() {
    List<String> words = new ArrayList<>();
    words.add(say("figure.curves", Map.of("value", value, "time", time)));
    if (provenance.demonstration()) {
      words.add(FigureProvenance.INVENTED);
    }
    words.addAll(sentences);
    for (Curve curve : curves) {
      long share = Math.round(100 * height(curve.shareAt(curve.end())));
      words.add(
          say(
              "figure.end-of-curve",
              Map.of("curve", curve.name(), "share", share, "time", Svg.n(curve.end()))));
    }
    words.addAll(cautions);
    return String.join(" ", words);
  }

  @Override
  public List<Picture> draw(Setting setting) {
    return List.of(CurveDrawing.draw(this, setting));
  }

  @Override
  public String csv() {
    return CurveTable.csv(this);
  }
}
