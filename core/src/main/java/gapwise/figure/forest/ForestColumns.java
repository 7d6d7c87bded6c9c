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
    double countsRight,
    double countsRoom,
    double plotLeft,
    double plotRight,
    double valuesRight) {
  /** Names get no more than this share of the width; longer ones wrap or are shortened. */
  private static final double MOST_FOR_NAMES = 0.28;

  /** The plot keeps at least this share of the width. */
  private static final double LEAST_FOR_PLOT = 0.23;

  /** Counts get no more than this share; they are a few figures, and longer words are shortened. */
  private static final double MOST_FOR_COUNTS = 0.16;

  static ForestColumns of(Forest forest, Style style) {
    Style.Sheet sheet = style.sheet();
    double gap = style.type().text() * 1.3;
    double lens = style.rhythm().lensRadius();
    if (sheet.stacked()) {
      double left = sheet.margin();
      return new ForestColumns(
          left,
          left,
          sheet.room(),
          left,
          sheet.right(),
          sheet.room(),
          left + lens,
          sheet.right() - lens,
          sheet.right());
    }
    double values = valuesRoom(forest, style);
    double counts = Math.min(countsRoom(forest, style), sheet.width() * MOST_FOR_COUNTS);
    double span = style.rhythm().span();
    double indent = indent(forest, style);
    double fixed = indent + span + counts + values + 4 * gap + 2 * lens;
    double most =
        Math.min(
            sheet.width() * MOST_FOR_NAMES, sheet.room() - fixed - sheet.width() * LEAST_FOR_PLOT);
    double label = Math.max(style.type().text() * 7, Math.min(most, labelRoom(forest, style)));
    double spanLeft = sheet.margin() + indent + label + gap;
    double countsRight = spanLeft + span + gap + counts;
    return new ForestColumns(
        sheet.margin(),
        sheet.margin() + indent,
        label,
        spanLeft,
        countsRight,
        counts,
        countsRight + gap + lens,
        sheet.right() - values - gap - lens,
        sheet.right());
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
  private static double countsRoom(Forest forest, Style style) {
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
            .map(width -> width - style.rhythm().span());
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
