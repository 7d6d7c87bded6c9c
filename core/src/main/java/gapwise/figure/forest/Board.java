package gapwise.figure.forest;

import gapwise.figure.drawing.Axis;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.Ticks;
import gapwise.figure.span.Span;
import gapwise.figure.span.SpanMark;
import gapwise.figure.value.Quantity;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * What all parts of one drawing share: the figure, sizes, columns, axis, scale of the spans.
 *
 * @param forest the figure
 * @param style sizes
 * @param columns where columns lie
 * @param axis the axis of the plot
 * @param spans the marks of the spans, all at one scale
 * @param greatestWeight greatest weight of a series (percent); 0 where there are no weights
 */
record Board(
    Forest forest,
    Style style,
    ForestColumns columns,
    Axis axis,
    SpanMark spans,
    double greatestWeight) {
  /** Lens without a weight: this share of the greatest. */
  private static final double LENS_WITHOUT_WEIGHT = 0.62;

  private static final int ROWS_WITHOUT_REPEATED_TICKS = 16;

  /** Room for one tick, in sizes of its text. */
  private static final double SIZES_PER_TICK = 2.9;

  static Board of(Forest forest, Style style) {
    return of(forest, style, ForestColumns.of(forest, style));
  }

  /** For a slide on which the plot has at least a share of the width. */
  static Board onSlide(Forest forest, Style style, double leastPlot) {
    return of(forest, style, ForestColumns.of(forest, style, leastPlot));
  }

  /** For pooled values alone, without columns of single series. */
  static Board compared(Forest forest, Style style) {
    return of(forest, style, ForestColumns.compared(forest, style));
  }

  private static Board of(Forest forest, Style style, ForestColumns columns) {
    double room = columns.plotRight() - columns.plotLeft();
    int most = (int) Math.max(4, Math.min(9, room / (SIZES_PER_TICK * style.type().small())));
    Ticks ticks = AxisRange.of(forest, most);
    Axis axis = new Axis(forest.measure(), ticks, columns.plotLeft(), columns.plotRight());
    List<Span> spans =
        Stream.concat(
                forest.rows().stream().map(ForestRow::span),
                forest.leftOut().stream().map(ForestLeftOut::span))
            .toList();
    Lettering inGap = Lettering.plain(style.type().small());
    SpanMark mark = SpanMark.fitting(spans, style.rhythm().span(), style.rhythm().bone(), inGap);
    double greatest =
        forest.rows().stream()
            .flatMapToDouble(row -> row.weightPercent().stream())
            .reduce(0, Math::max);
    return new Board(forest, style, columns, axis, mark, greatest);
  }

  /** Half the width of a lens whose area is proportional to the weight. */
  double lensRadius(OptionalDouble weightPercent) {
    double greatestRadius = style.rhythm().lensRadius();
    if (weightPercent.isEmpty() || greatestWeight == 0) {
      return greatestRadius * LENS_WITHOUT_WEIGHT;
    }
    return greatestRadius * Math.sqrt(weightPercent.getAsDouble() / greatestWeight);
  }

  /** A missing length in its column: drawn, or where the plot needs the room, in words. */
  void span(Svg svg, Span span, double middle) {
    if (columns.bonesDrawn()) {
      spans.draw(svg, span, columns.spanLeft(), middle);
      return;
    }
    Lettering letters = style.text();
    double baseline = middle + letters.middleToBaseline();
    svg.text(columns.spanRight(), baseline, Svg.Anchor.END, letters, span.label());
  }

  /** Whether the figure is so long that the ticks are told again at each block. */
  boolean repeatsTicks() {
    boolean phone = style.sheet().stacked() && style.sheet().onScreen();
    return phone || forest.rows().size() > ROWS_WITHOUT_REPEATED_TICKS;
  }

  /** Light lines at the ticks, the dotted no-effect line and named thresholds. */
  void grid(Svg svg, double top, double bottom) {
    StringBuilder lines = new StringBuilder();
    for (double x : axis.tickPositions()) {
      lines.append('M').append(Svg.at(x, top)).append('V').append(Svg.n(bottom));
    }
    svg.stroke(lines.toString(), Ink.GRID, 1);
    Quantity measure = forest.measure();
    measure
        .noEffect()
        .ifPresent(
            none -> svg.dashed(axis.x(none), top, axis.x(none), bottom, Ink.INK, 1.1, "1.2 3"));
    for (AxisWords.Threshold line : forest.axis().thresholds()) {
      double x = axis.x(line.value());
      svg.dashed(x, top, x, bottom, Ink.SOFT, 1, "7 3");
    }
  }
}
