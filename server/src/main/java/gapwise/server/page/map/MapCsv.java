package gapwise.server.page.map;

import gapwise.answer.grid.EvidenceGrid;
import gapwise.answer.grid.Tally;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** The map as CSV (RFC 4180): one line for each method and size, empty ones too. */
final class MapCsv {
  private MapCsv() {}

  static String of(EvidenceGrid grid, List<Method> methods) {
    StringBuilder text = new StringBuilder();
    try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
      printer.printRecord(heads());
      for (Method method : methods) {
        print(printer, method.code(), grid, grid.row(method));
      }
      print(printer, "all", grid, grid.all());
    } catch (IOException e) {
      throw new UncheckedIOException("the table could not be written to memory", e);
    }
    return text.toString();
  }

  private static List<String> heads() {
    List<String> heads =
        new ArrayList<>(
            List.of("method", "size", "fromCm", "belowCm", "studies", "groups", "patients"));
    Stream.of(Design.values()).map(design -> design.code() + "Studies").forEach(heads::add);
    heads.add("designNotGivenStudies");
    return heads;
  }

  private static void print(
      CSVPrinter printer, String method, EvidenceGrid grid, EvidenceGrid.Row row)
      throws IOException {
    for (int i = 0; i < grid.bands().size(); i++) {
      LengthRange band = grid.bands().get(i);
      String to = Double.isInfinite(band.toCentimetres()) ? "" : plain(band.toCentimetres());
      line(printer, method, "band", plain(band.fromCentimetres()), to, row.banded().get(i));
    }
    line(printer, method, "no-middle-given", "", "", row.unsized());
    line(printer, method, "all", "", "", row.all());
  }

  private static void line(
      CSVPrinter printer, String method, String size, String from, String to, Tally tally)
      throws IOException {
    List<Object> values =
        new ArrayList<>(
            List.of(method, size, from, to, tally.studies(), tally.arms(), tally.patients()));
    for (Design design : Design.values()) {
      values.add(tally.designs().getOrDefault(design, 0));
    }
    values.add(tally.designNotGiven());
    printer.printRecord(values);
  }

  private static String plain(double centimetres) {
    return BigDecimal.valueOf(centimetres).stripTrailingZeros().toPlainString();
  }
}
