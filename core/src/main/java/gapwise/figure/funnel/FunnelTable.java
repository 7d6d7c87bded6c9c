package gapwise.figure.funnel;

import gapwise.figure.file.CsvCell;
import gapwise.figure.file.CsvOrigin;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * The data of a funnel plot as rows, for a table beside the figure and as CSV.
 *
 * @param lines series in order, then imagined ones
 */
public record FunnelTable(Funnel funnel, List<Line> lines) {
  /**
   * One line.
   *
   * @param imagined whether trim and fill imagined it
   * @param point effect and standard error on the analysis scale
   * @param shown the effect as the figure's axis tells it
   */
  public record Line(boolean imagined, Funnel.Point point, String shown) {}

  public FunnelTable {
    lines = List.copyOf(lines);
  }

  /** The table of a figure. */
  public static FunnelTable of(Funnel funnel) {
    List<Line> lines = new ArrayList<>();
    funnel.points().forEach(point -> lines.add(line(funnel, false, point)));
    funnel.imagined().forEach(point -> lines.add(line(funnel, true, point)));
    return new FunnelTable(funnel, lines);
  }

  private static Line line(Funnel funnel, boolean imagined, Funnel.Point point) {
    return new Line(imagined, point, funnel.scale().shown(point.effect()));
  }

  /**
   * The table as CSV (RFC 4180). Numbers carry all digits; what the whole figure shares stands in
   * columns of its own in every line.
   */
  String csv() {
    StringBuilder out = new StringBuilder();
    List<String> names = new ArrayList<>();
    names.addAll(List.of("kind", "label", "effect", "standard-error", "shown", "pooled-effect"));
    names.add("effect-is");
    names.addAll(CsvOrigin.NAMES);
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader(names.toArray(String[]::new)).get();
    try (CSVPrinter printer = new CSVPrinter(out, format)) {
      for (Line line : lines) {
        List<Object> cells = new ArrayList<>();
        cells.add(line.imagined() ? "imagined" : "series");
        cells.add(CsvCell.text(line.point().label()));
        cells.add(Double.toString(line.point().effect()));
        cells.add(Double.toString(line.point().standardError()));
        cells.add(CsvCell.text(line.shown()));
        cells.add(funnel.centre().map(centre -> Double.toString(centre.effect())).orElse(""));
        cells.add(CsvCell.text(funnel.axis().heading()));
        cells.addAll(CsvOrigin.of(funnel));
        printer.printRecord(cells);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("text in memory could not be written", e);
    }
    return out.toString();
  }
}
