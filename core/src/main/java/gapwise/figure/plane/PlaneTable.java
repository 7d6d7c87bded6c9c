package gapwise.figure.plane;

import gapwise.figure.Figure;
import gapwise.figure.file.CsvCell;
import gapwise.figure.file.CsvOrigin;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** The data of the figures of this room as CSV (RFC 4180), numbers with all digits. */
final class PlaneTable {
  private PlaneTable() {}

  /** The mean of each method, then its draws that are shown. */
  static String csv(Plane plane) {
    List<List<Object>> rows = new ArrayList<>();
    for (Cloud cloud : plane.clouds()) {
      rows.add(row(plane, cloud, "mean", cloud.mean()));
      cloud.shown().forEach(spot -> rows.add(row(plane, cloud, "draw", spot)));
    }
    return print(
        plane,
        List.of("method", "against", "is", "extra-effect", "extra-cost", "draws", "effect", "cost"),
        rows);
  }

  private static List<Object> row(Plane plane, Cloud cloud, String is, Cloud.Spot spot) {
    return List.of(
        CsvCell.text(cloud.kind().label()),
        CsvCell.text(plane.against()),
        is,
        spot.effect(),
        spot.cost(),
        cloud.draws(),
        CsvCell.text(plane.effect()),
        CsvCell.text(plane.cost()));
  }

  /** A line for each method at each amount of money. */
  static String csv(Acceptability figure) {
    List<List<Object>> rows = new ArrayList<>();
    for (int i = 0; i < figure.amounts().size(); i++) {
      for (int m = 0; m < figure.lines().size(); m++) {
        rows.add(
            List.of(
                CsvCell.text(figure.lines().get(m).kind().label()),
                figure.amounts().get(i),
                figure.lines().get(m).shares().get(i),
                figure.best().get(i) == m ? "yes" : "no",
                CsvCell.text(figure.amount())));
      }
    }
    return print(
        figure, List.of("method", "amount", "share", "best-on-average", "amount-is"), rows);
  }

  private static String print(Figure figure, List<String> columns, List<List<Object>> rows) {
    List<String> names = new ArrayList<>(columns);
    names.addAll(CsvOrigin.NAMES);
    StringBuilder out = new StringBuilder();
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader(names.toArray(String[]::new)).get();
    try (CSVPrinter printer = new CSVPrinter(out, format)) {
      for (List<Object> row : rows) {
        List<Object> cells = new ArrayList<>(row);
        cells.addAll(CsvOrigin.of(figure));
        printer.printRecord(cells);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("text in memory could not be written", e);
    }
    return out.toString();
  }
}
