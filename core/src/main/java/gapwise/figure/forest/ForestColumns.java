package gapwise.figure.forest;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Style;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * Where the columns of a figure lie, from the measured width of what stands in them.
 *
 * @param blockLeft x of the names of blocks
 * @param labelLeft x of the names of series
 * @param labelRoom room for a name
 * @param spanLeft x of the spans
 * @param spanRoom room for a span; none where only pooled values stand
 * @param bonesDrawn whether spans are drawn, not told in numbers
 * @param countsRight right edge of the counts
 * @param countsRoom room for the counts
 * @param plotLeft left end of the axis
 * @param plotRight right end of the axis
 * @param valuesRight right edge of the values
 */
record ForestColumns(
    double blockLeft,
    double labelLeft,
    double labelRoom,
    double spanLeft,
    double spanRoom,
    boolean bonesDrawn,
    double countsRight,
    double countsRoom,
    double plotLeft,
    double plotRight,
    double valuesRight) {
  /** Names get no more than this share of the width; longer ones wrap or are shortened. */
  private static final double MOST_FOR_NAMES = 0.26;

  private static final double MOST_FOR_NAMES_ON_A_SLIDE = 0.22;

  /** Names of methods where they alone stand beside the plot. */
  private static final double MOST_FOR_METHODS = 0.3;

  /** Of a column of a paper; the plot has the rest. */
  private static final double BESIDE_THE_PLOT = 0.42;

  /** The plot keeps at least this share of the width. */
  private static final double LEAST_FOR_PLOT = 0.3;

  /** A slide is looked at from afar, and at its plot. */
  static final double PLOT_ON_A_SLIDE = 0.5;

  /** This much where names would break and the rows need more slides. */
  static final double LEAST_FOR_PLOT_ON_A_SLIDE = 0.44;

  /** Between columns, in sizes of text. */
  private static final double GAP = 1.3;

  private static final double GAP_ON_A_SLIDE = 0.8;

  /** Names keep room for this many sizes of text, at the cost of the plot. */
  private static final double LEAST_FOR_NAMES = 7;

  static final double LEAST_FOR_NAMES_ON_A_SLIDE = 8;

  /** The longer line of a heading broken in two. */
  private static final double HALF_A_HEADING = 0.6;

  /** Counts get no more than this share; they are a few figures, and longer words are shortened. */
  private static final double MOST_FOR_COUNTS = 0.16;

  private static final double MOST_FOR_COUNTS_ON_A_SLIDE = 0.1;

  static ForestColumns of(Forest forest, Style style) {
    return of(forest, style, style.sheet().landscape() ? PLOT_ON_A_SLIDE : LEAST_FOR_PLOT);
  }

  /**
   * Columns of series.
   *
   * @param leastPlot share of the width that names leave to the plot as long as they have their
   *     least room
   */
  static ForestColumns of(Forest forest, Style style, double leastPlot) {
    Style.Sheet sheet = style.sheet();
    double lens = style.rhythm().lensRadius();
    if (sheet.stacked()) {
      return stacked(style);
    }
    boolean slide = sheet.landscape();
    double gap = style.type().text() * (slide ? GAP_ON_A_SLIDE : GAP);
    double values = valuesRoom(forest, style);
    double span = slide ? boneWords(forest, style) : style.rhythm().span();
    double mostCounts = slide ? MOST_FOR_COUNTS_ON_A_SLIDE : MOST_FOR_COUNTS;
    double counts = Math.min(countsRoom(forest, style, span), sheet.width() * mostCounts);
    double indent = indent(forest, style);
    double fixed = indent + span + counts + values + 4 * gap + 2 * lens;
    double mostNames = slide ? MOST_FOR_NAMES_ON_A_SLIDE : MOST_FOR_NAMES;
    double most =
        Math.min(sheet.width() * mostNames, sheet.room() - fixed - sheet.width() * leastPlot);
    double least = style.type().text() * (slide ? LEAST_FOR_NAMES_ON_A_SLIDE : LEAST_FOR_NAMES);
    double label = Math.max(least, Math.min(most, labelRoom(forest, style)));
    double spanLeft = sheet.margin() + indent + label + gap;
    double countsRight = spanLeft + span + gap + counts;
    return new ForestColumns(
        sheet.margin(),
        sheet.margin() + indent,
        label,
        spanLeft,
        span,
        !slide,
        countsRight,
        counts,
        countsRight + gap + lens,
        sheet.right() - values - gap - lens,
        sheet.right());
  }

  /** On a phone the plot has the full width; in a column of a paper numbers stand beside it. */
  private static ForestColumns stacked(Style style) {
    Style.Sheet sheet = style.sheet();
    double left = sheet.margin();
    double lens = style.rhythm().lensRadius();
    double beside = sheet.onScreen() ? 0 : sheet.room() * BESIDE_THE_PLOT;
    return new ForestColumns(
        left,
        left,
        sheet.room(),
        left,
        style.rhythm().span(),
        sheet.onScreen(),
        sheet.right(),
        sheet.room(),
        left + beside + lens,
        sheet.right() - lens,
        sheet.right());
  }

  /** For pooled values alone: names of methods, plot, values. */
  static ForestColumns compared(Forest forest, Style style) {
    Style.Sheet sheet = style.sheet();
    double gap = style.type().text();
    double lens = style.rhythm().lensRadius();
    double left = sheet.margin();
    double values = valuesRoom(forest, style);
    double beside = values + 2 * gap + 2 * lens;
    double names =
        Math.min(
            sheet.width() * MOST_FOR_METHODS,
            sheet.room() - beside - sheet.width() * PLOT_ON_A_SLIDE);
    return new ForestColumns(
        left,
        left,
        names,
        left + names,
        0,
        false,
        left + names,
        0,
        left + names + gap + lens,
        sheet.right() - values - gap - lens,
        sheet.right());
  }

  /** Whether there is a column of missing lengths. */
  boolean bonesTold() {
    return spanRoom > 0;
  }

  double spanRight() {
    return spanLeft + spanRoom;
  }

  double plotWidth() {
    return plotRight - plotLeft;
  }

  /** Room for missing lengths in numbers, under a heading of two lines. */
  private static double boneWords(Forest forest, Style style) {
    double heading = style.small().width(ColumnHeads.SPAN) * HALF_A_HEADING;
    DoubleStream labels =
        Stream.concat(
                forest.rows().stream().map(ForestRow::span),
                forest.leftOut().stream().map(ForestLeftOut::span))
            .mapToDouble(span -> style.text().width(span.label()));
    return labels.reduce(heading, Math::max) + 1;
  }

  /** Where a new centre is likely to lie, as it stands under a pooled value. */
  static String newCentre(Forest forest, Limits limits) {
    return say("figure.new-centre", Map.of("limits", Shown.limits(forest.measure(), limits)));
  }

  /** Series stand in from the names of their blocks, where blocks have names. */
  private static double indent(Forest forest, Style style) {
    boolean named = forest.blocks().stream().anyMatch(block -> !block.name().isBlank());
    return named ? style.type().text() : 0;
  }

  private static double labelRoom(Forest forest, Style style) {
    Stream<Double> names =
        forest.rows().stream()
            .map(
                row ->
                    Math.max(style.text().width(row.study()), style.small().width(row.detail())));
    Stream<Double> summaries =
        forest.pooled().stream().map(pooled -> style.bold().width(pooled.label()));
    Stream<Double> out = forest.leftOut().stream().map(row -> style.text().width(row.study()));
    return Stream.of(names, summaries, out)
        .flatMap(each -> each)
        .mapToDouble(width -> width + 2)
        .max()
        .orElse(0);
  }

  /** Words of a summary reach into the room of the spans, since a summary has none. */
  private static double countsRoom(Forest forest, Style style, double span) {
    DoubleStream rows =
        Stream.concat(
                forest.rows().stream().map(ForestRow::counts),
                forest.leftOut().stream().map(ForestLeftOut::counts))
            .mapToDouble(style.text()::width);
    DoubleStream pooled =
        forest.pooled().stream()
            .mapToDouble(
                each ->
                    Math.max(
                        style.small().width(each.participants()),
                        style.small().width(each.series().words())))
            .map(width -> width - span);
    double heading = style.small().width(forest.heading().counts());
    return DoubleStream.concat(rows, pooled).reduce(heading, Math::max);
  }

  private static double valuesRoom(Forest forest, Style style) {
    Quantity measure = forest.measure();
    DoubleStream rows =
        forest.rows().stream()
            .mapToDouble(row -> style.text().width(Shown.estimate(measure, row.estimate())));
    DoubleStream pooled =
        forest.pooled().stream()
            .mapToDouble(
                each ->
                    Math.max(
                        style.bold().width(Shown.estimate(measure, each.estimate())),
                        each.prediction()
                            .map(p -> style.small().width(newCentre(forest, p)))
                            .orElse(0.0)));
    double heading = style.small().width(forest.heading().values());
    return DoubleStream.concat(rows, pooled).reduce(heading, Math::max);
  }
}
