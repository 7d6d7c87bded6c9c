package gapwise.figure.funnel;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.Figure;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.value.Check;
import gapwise.figure.value.Limits;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A funnel plot as a value: effects of series against their standard errors, with the pooled value,
 * the lines between which series would lie if only chance told them apart, and contours of the p
 * value of each series alone (Peters et al., J Clin Epidemiol 2008;61:991). Draw it with {@link
 * FunnelDrawing}, list it with {@link FunnelTable}. Effects and standard errors are on the analysis
 * scale.
 *
 * @param title what is shown
 * @param sentences the pattern in words, and what it does not prove
 * @param axis words at the axis of effects
 * @param scale how effects are told
 * @param points the series
 * @param centre pooled value and its lines; empty where nothing is pooled
 * @param contours p value contours about no effect; empty for a measure without no effect
 * @param imagined series that trim and fill adds
 * @param cautions what must be known beside it
 * @param provenance where the numbers come from
 */
public record Funnel(
    String title,
    List<String> sentences,
    AxisWords axis,
    FunnelScale scale,
    List<Point> points,
    Optional<Centre> centre,
    Optional<Contours> contours,
    List<Point> imagined,
    List<String> cautions,
    FigureProvenance provenance)
    implements Figure {
  /** A series, or an imagined one. */
  public record Point(String label, double effect, double standardError) {
    public Point {
      Check.words(label, "label");
      Check.finite(effect, "effect");
      Check.finite(standardError, "standardError");
      if (standardError < 0) {
        throw new IllegalArgumentException(label + ": standard error " + standardError);
      }
    }
  }

  /**
   * The pooled value with lines at a multiple of the standard error on both sides.
   *
   * @param effect the pooled value
   * @param level share of series between the lines if only chance told them apart, such as 0.95
   * @param multiplier of the standard error
   */
  public record Centre(double effect, double level, double multiplier) {
    public Centre {
      Check.finite(effect, "effect");
      Check.finite(multiplier, "multiplier");
    }
  }

  /**
   * Contours about the value of no effect.
   *
   * @param noEffect where there is no effect
   * @param lines rising by level
   */
  public record Contours(double noEffect, List<Contour> lines) {
    public Contours {
      Check.finite(noEffect, "noEffect");
      lines = lines.stream().sorted(Comparator.comparingDouble(Contour::level)).toList();
    }
  }

  /**
   * Where the p value of a series alone is one less the level.
   *
   * @param multiplier of the standard error
   */
  public record Contour(double level, double multiplier) {
    public Contour {
      if (!(level > 0 && level < 1 && multiplier > 0 && Double.isFinite(multiplier))) {
        throw new IllegalArgumentException("no contour: " + level + ", " + multiplier);
      }
    }

    /** One less the level, as people write it. */
    String pValue() {
      return java.math.BigDecimal.ONE
          .subtract(java.math.BigDecimal.valueOf(level))
          .stripTrailingZeros()
          .toPlainString();
    }
  }

  public Funnel {
    Check.words(title, "title");
    sentences = List.copyOf(sentences);
    Objects.requireNonNull(axis, "axis");
    Objects.requireNonNull(scale, "scale");
    points = List.copyOf(points);
    Objects.requireNonNull(centre, "centre");
    Objects.requireNonNull(contours, "contours");
    imagined = List.copyOf(imagined);
    cautions = List.copyOf(cautions);
    Objects.requireNonNull(provenance, "provenance");
  }

  /** The largest standard error of series and imagined ones; 0 without any. */
  double largestError() {
    return Stream.concat(points.stream(), imagined.stream())
        .mapToDouble(Point::standardError)
        .max()
        .orElse(0);
  }

  /** The stretch of effects that must be seen: series, imagined ones, the lines of the centre. */
  Limits reach() {
    double error = largestError();
    List<Double> seen =
        Stream.of(
                points.stream().map(Point::effect),
                imagined.stream().map(Point::effect),
                centre.stream().map(c -> c.effect() - c.multiplier() * error),
                centre.stream().map(c -> c.effect() + c.multiplier() * error),
                contours.stream().map(Contours::noEffect))
            .flatMap(each -> each)
            .toList();
    double lower = seen.stream().min(Comparator.naturalOrder()).orElse(-1.0);
    double upper = seen.stream().max(Comparator.naturalOrder()).orElse(1.0);
    double room = upper > lower ? 0.03 * (upper - lower) : Math.max(0.5, Math.abs(lower) * 0.1);
    return new Limits(lower - room, upper + room);
  }

  @Override
  public String description() {
    List<String> words = new ArrayList<>();
    words.add(say("figure.funnel", Map.of("axis", axis.heading())));
    if (provenance.demonstration()) {
      words.add(FigureProvenance.INVENTED);
    }
    words.add(
        centre
            .map(this::sides)
            .orElseGet(
                () ->
                    say(
                        "figure.funnel-series",
                        Map.of("series", Integer.toString(points.size())))));
    if (centre.isEmpty()) {
      words.add(say("figure.no-middle-line"));
    }
    if (!imagined.isEmpty()) {
      words.add(say("figure.imagined-series", Map.of("series", imagined.size())));
    }
    words.addAll(sentences);
    words.addAll(cautions);
    return String.join(" ", words);
  }

  private String sides(Centre middle) {
    long left = points.stream().filter(p -> p.effect() < middle.effect()).count();
    return say(
        "figure.funnel-sides",
        Map.of(
            "series",
            Integer.toString(points.size()),
            "left",
            left,
            "right",
            Long.toString(points.size() - left)));
  }

  @Override
  public List<Picture> draw(Setting setting) {
    return List.of(FunnelDrawing.draw(this, setting));
  }

  @Override
  public String csv() {
    return FunnelTable.of(this).csv();
  }
}
