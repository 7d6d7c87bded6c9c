package gapwise.figure.curve;

import gapwise.figure.file.CsvCell;
import gapwise.figure.file.CsvOrigin;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** The data of a {@link CurveFigure} as CSV. */
final class CurveTable {
  private CurveTable() {}

  /**
   * Every step of every curve as CSV (RFC 4180), numbers with all digits. Shares are as drawn: with
   * the event if the figure rises. What the whole figure shares stands in columns of its own.
   */
  static String csv(CurveFigure figure) {
    List<String> names = new ArrayList<>();
    names.addAll(List.of("curve", "pooled", "time", "share", "lower", "upper", "ends"));
    names.addAll(List.of("value-is", "time-is"));
    names.addAll(CsvOrigin.NAMES);
    StringBuilder out = new StringBuilder();
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader(names.toArray(String[]::new)).get();
    try (CSVPrinter printer = new CSVPrinter(out, format)) {
      for (Curve curve : figure.curves()) {
        print(printer, figure, curve, new Curve.Step(0, 1, Optional.empty()));
        for (Curve.Step step : curve.steps()) {
          print(printer, figure, curve, step);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException("text in memory could not be written", e);
    }
    return out.toString();
  }

  private static void print(CSVPrinter printer, CurveFigure figure, Curve curve, Curve.Step step)
      throws IOException {
    List<Double> limits =
        step.limits().stream()
            .flatMap(l -> Stream.of(figure.height(l.lower()), figure.height(l.upper())))
            .sorted()
            .toList();
    List<Object> cells = new ArrayList<>();
    cells.add(CsvCell.text(curve.name()));
    cells.add(curve.pooled() ? "yes" : "no");
    cells.add(step.time());
    cells.add(figure.height(step.share()));
    cells.add(limits.isEmpty() ? "" : limits.get(0));
    cells.add(limits.isEmpty() ? "" : limits.get(1));
    cells.add(curve.end());
    cells.add(CsvCell.text(figure.value()));
    cells.add(CsvCell.text(figure.time()));
    cells.addAll(CsvOrigin.of(figure));
    printer.printRecord(cells);
  }
}
