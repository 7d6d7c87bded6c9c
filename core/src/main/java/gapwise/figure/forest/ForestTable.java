package gapwise.figure.forest;

import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * The data of a forest plot as rows: for a table beside the figure, which a screen reader reads,
 * and as CSV. Shown numbers come from {@link Shown}, as in the figure.
 *
 * @param lines series by block, each block's summary after its series, then the overall summary,
 *     then what was left out
 */
public record ForestTable(Forest forest, List<Line> lines) {

  /** What a line of the table is. */
  public enum Kind {
    /** One series. */
    SERIES,
    /** The summary of a block. */
    BLOCK,
    /** The summary over all blocks. */
    OVERALL,
    /** A series that could not enter. */
    LEFT_OUT
  }

  /**
   * One line.
   *
   * @param kind what it is
   * @param block name of its block; empty for none
   * @param label series or summary
   * @param detail second line of a series, or why there is no value
   * @param missingBone the span in words; empty for summaries
   * @param counts counts in words
   * @param estimate value with interval; empty where there is none
   * @param prediction prediction limits of a summary
   * @param weightPercent share of information
   * @param shown value with interval as the figure shows it; empty where there is none
   * @param shownPrediction prediction limits as the figure shows them
   * @param citation where a series was published; empty for none
   */
  public record Line(
      Kind kind,
      String block,
      String label,
      String detail,
      String missingBone,
      String counts,
      Optional<Estimate> estimate,
      Optional<Limits> prediction,
      OptionalDouble weightPercent,
      String shown,
      String shownPrediction,
      String citation) {

    /** The estimate where its interval is known. */
    Optional<Estimate> interval() {
      return estimate.filter(Estimate::intervalKnown);
    }
  }

  public ForestTable {
    lines = List.copyOf(lines);
  }

  /** The table of a figure. */
  public static ForestTable of(Forest forest) {
    List<Line> lines = new ArrayList<>();
    for (Block block : forest.blocks()) {
      block.rows().forEach(row -> lines.add(series(forest, block.name(), row)));
      lines.add(summary(forest, Kind.BLOCK, block.name(), block.summary()));
    }
    forest.overall().ifPresent(all -> lines.add(summary(forest, Kind.OVERALL, "", all)));
    forest.leftOut().forEach(row -> lines.add(leftOut(row)));
    return new ForestTable(forest, lines);
  }

  private static Line series(Forest forest, String block, ForestRow row) {
    return new Line(
        Kind.SERIES,
        block,
        row.study(),
        row.detail(),
        row.span().words(),
        row.counts(),
        Optional.of(row.estimate()),
        Optional.empty(),
        row.weightPercent(),
        Shown.estimate(forest.measure(), row.estimate()),
        "",
        row.citation());
  }

  private static Line summary(Forest forest, Kind kind, String block, ForestSummary summary) {
    if (summary instanceof ForestSummary.NotPooled none) {
      return withoutValue(kind, block, none.label(), none.reason(), "", "");
    }
    ForestSummary.Pooled pooled = (ForestSummary.Pooled) summary;
    Quantity measure = forest.measure();
    return new Line(
        kind,
        block,
        pooled.label(),
        "",
        "",
        String.join(", ", pooled.size()),
        Optional.of(pooled.estimate()),
        pooled.prediction(),
        OptionalDouble.empty(),
        Shown.estimate(measure, pooled.estimate()),
        pooled.prediction().map(limits -> Shown.limits(measure, limits)).orElse(""),
        "");
  }

  private static Line leftOut(ForestLeftOut row) {
    return withoutValue(
        Kind.LEFT_OUT, "", row.study(), row.reason(), row.span().words(), row.counts());
  }

  private static Line withoutValue(
      Kind kind, String block, String label, String reason, String bone, String counts) {
    return new Line(
        kind,
        block,
        label,
        reason,
        bone,
        counts,
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.empty(),
        "",
        "",
        "");
  }

  /**
   * The table as CSV (RFC 4180: comma, quotes doubled, lines end with CR LF, first line names).
   * Numbers carry all digits in the unit of the measure; what the whole figure shares (title,
   * measure, model, data version, date, demonstration) stands in columns of its own in every line.
   */
  String csv() {
    StringBuilder out = new StringBuilder();
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader(CsvColumns.names()).get();
    try (CSVPrinter printer = new CSVPrinter(out, format)) {
      for (Line line : lines) {
        printer.printRecord(CsvColumns.cells(forest, line));
      }
    } catch (IOException e) {
      throw new UncheckedIOException("text in memory could not be written", e);
    }
    return out.toString();
  }
}
