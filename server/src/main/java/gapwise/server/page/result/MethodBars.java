package gapwise.server.page.result;

import gapwise.answer.MethodLine;
import gapwise.answer.MethodTable;
import gapwise.figure.drawing.Ticks;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * The common axis of the lines of methods, and what stands on it, in the units of the drawing: an
 * axis as wide as {@link #WIDTH} between margins.
 */
public final class MethodBars {
  /** Width and margin of the drawing; ends of the axis carry half a number beyond them. */
  public static final int WIDTH = 240;

  private static final int MARGIN = 14;
  private static final int MOST_TICKS = 6;

  /**
   * Limits reach no further than this many times the largest value, and leave with an arrow head
   * (our choice): one series of one patient does not flatten all others.
   */
  private static final double FARTHEST = 3;

  private final Ticks ticks;
  private final double factor;

  private MethodBars(Ticks ticks, double factor) {
    this.ticks = ticks;
    this.factor = factor;
  }

  /** One number on the axis. */
  public record Tick(String x, String words) {}

  /**
   * A stretch of the axis.
   *
   * @param from left end
   * @param to right end
   * @param width of both
   * @param leaves whether more of it lies beyond the right end
   */
  public record Stretch(String from, String to, String width, boolean leaves) {}

  /**
   * What stands on the axis for one method.
   *
   * @param interval of the value
   * @param value the value itself
   * @param newCentre where a new centre may lie
   * @param average whether the value is an average; else that of one series
   */
  public record Bar(Stretch interval, String value, Optional<Stretch> newCentre, boolean average) {}

  static MethodBars of(MethodTable table) {
    Quantity measure = table.measure();
    double factor = measure.axisFactor();
    if (measure.kind() == Quantity.Kind.OF_100) {
      return new MethodBars(Ticks.linear(0, factor, MOST_TICKS), factor);
    }
    List<Estimate> values = table.lines().stream().flatMap(line -> value(line).stream()).toList();
    double largest = values.stream().mapToDouble(Estimate::value).max().orElse(1);
    double least = Math.min(0, values.stream().mapToDouble(Estimate::value).min().orElse(0));
    double most =
        Math.min(
            Math.max(largest, least) * FARTHEST,
            Stream.concat(values.stream().map(Estimate::limits), newCentres(table))
                .flatMapToDouble(limits -> DoubleStream.of(limits.upper()))
                .max()
                .orElse(largest));
    return new MethodBars(
        Ticks.linear(least * factor, Math.max(largest, most) * factor, MOST_TICKS), factor);
  }

  private static Optional<Estimate> value(MethodLine line) {
    if (line.finding() instanceof MethodLine.Average average) {
      return Optional.of(average.value());
    }
    return line.finding() instanceof MethodLine.OneSeries one
        ? Optional.of(one.value())
        : Optional.empty();
  }

  private static Stream<Limits> newCentres(MethodTable table) {
    return table.lines().stream()
        .map(MethodLine::finding)
        .filter(MethodLine.Average.class::isInstance)
        .flatMap(average -> ((MethodLine.Average) average).newCentre().stream());
  }

  /** The numbers of the axis. */
  public List<Tick> ticks() {
    return ticks.values().stream()
        .map(tick -> new Tick(x(tick.doubleValue()), tick.stripTrailingZeros().toPlainString()))
        .toList();
  }

  /** What stands on the axis for a method; empty where it has no number. */
  Optional<Bar> bar(MethodLine line) {
    return value(line)
        .map(
            estimate ->
                new Bar(
                    stretch(estimate.limits()),
                    x(estimate.value() * factor),
                    line.finding() instanceof MethodLine.Average average
                        ? average.newCentre().map(this::stretch)
                        : Optional.empty(),
                    line.finding() instanceof MethodLine.Average));
  }

  private Stretch stretch(Limits limits) {
    double from = place(limits.lower() * factor);
    double to = place(limits.upper() * factor);
    return new Stretch(
        shown(from), shown(to), shown(to - from), limits.upper() * factor > ticks.upper());
  }

  private String x(double value) {
    return shown(place(value));
  }

  private double place(double value) {
    double inside = Math.min(ticks.upper(), Math.max(ticks.lower(), value));
    return MARGIN
        + (inside - ticks.lower()) / (ticks.upper() - ticks.lower()) * (WIDTH - 2 * MARGIN);
  }

  private static String shown(double place) {
    return String.format(Locale.ROOT, "%.1f", place);
  }
}
