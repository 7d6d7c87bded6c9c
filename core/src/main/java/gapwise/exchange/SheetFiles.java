package gapwise.exchange;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.evidence.Study;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Studies as the sheets of the template, one CSV file (RFC 4180) a sheet, without loss. Studies are
 * held one at a time: each sheet passes over them once.
 */
public final class SheetFiles {
  private final Passing studies;
  private final List<Sheet> sheets;

  private SheetFiles(Passing studies, List<Sheet> sheets) {
    this.studies = studies;
    this.sheets = sheets;
  }

  /** Hands every study over, the same ones in the same order each time. */
  @FunctionalInterface
  public interface Passing {
    /** Passes on every study, one at a time. */
    void forEach(Consumer<? super Study> each);
  }

  /** The sheets of some studies; passes over them once for the outcomes that patients have. */
  public static SheetFiles of(Passing studies) {
    Set<String> codes = new TreeSet<>();
    studies.forEach(study -> codes.addAll(PatientSheet.outcomes(study)));
    return new SheetFiles(studies, Export.sheets(PatientSheet.sheetFor(codes)));
  }

  /** The names of the sheets in their order. */
  public List<String> names() {
    return sheets.stream().map(Sheet::name).toList();
  }

  /**
   * A sheet as a resource of a Data Package, version 1.
   *
   * @param path of its file in the package
   */
  public ObjectNode described(String sheet, String path) {
    return DataPackage.version1(named(sheet), path);
  }

  /**
   * Writes one sheet, column names first, then the row of descriptions.
   *
   * @param target not closed
   * @throws IllegalArgumentException where there is no such sheet
   */
  public void write(String sheet, Appendable target) throws IOException {
    Sheet wanted = named(sheet);
    // The target belongs to the caller, who closes it.
    @SuppressWarnings("resource")
    CSVPrinter printer = new CSVPrinter(target, CSVFormat.RFC4180);
    printer.printRecord(wanted.names());
    List<Field<?>> fields = wanted.fields();
    for (int index = 0; index < fields.size(); index++) {
      printer.print(Readme.remark(fields.get(index), index == 0));
    }
    printer.println();
    try {
      studies.forEach(
          study -> Export.rows(List.of(study), wanted).forEach(row -> print(row, fields, printer)));
    } catch (UncheckedIOException unwritten) {
      throw new IOException("the sheet " + sheet + " could not be written", unwritten);
    }
    printer.flush();
  }

  private static void print(RowWriter row, List<Field<?>> fields, CSVPrinter printer) {
    try {
      for (Field<?> field : fields) {
        RowWriter.Written cell = row.cells().get(field.name());
        printer.print(cell == null ? "" : cell.text());
      }
      printer.println();
    } catch (IOException unwritten) {
      throw new UncheckedIOException(unwritten);
    }
  }

  private Sheet named(String name) {
    return sheets.stream()
        .filter(candidate -> candidate.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no sheet " + name + " among " + names()));
  }
}
