package gapwise.whole;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.datapackage.PackageReader;
import gapwise.datapackage.PackagedFile;
import gapwise.exchange.DataPackage;
import gapwise.exchange.Export;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.store.DocumentStore;
import gapwise.store.WriteAnswer;
import gapwise.table.TableFile;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;

/** A package of a whole base, found right to its last byte before any of it is stored. */
public final class WholePackage {
  private final PackageReader reader;
  private final PackagedFile history;

  private WholePackage(PackageReader reader) {
    this.reader = reader;
    this.history = required(HistoryLines.FILE);
  }

  /**
   * Reads all of it and holds it against its checksums, its history against the change log, and
   * each content against what is kept so.
   *
   * @param reader stays open as long as this is used
   * @throws WrongInputException with what is wrong
   */
  public static WholePackage checked(PackageReader reader) throws IOException {
    requireReadable(reader.head().path(WholeForm.OWN).path("holds").asText(), reader.head());
    WholePackage whole = new WholePackage(reader);
    reader.check();
    whole.checkHistory();
    return whole;
  }

  private static void requireReadable(String holds, ObjectNode head) {
    int form = head.path(WholeForm.OWN).path("form").asInt();
    if (!holds.equals(WholeForm.HOLDS) || form < 1) {
      throw wrong(
          "no-evidence-base",
          "This package is none of a whole evidence base, as the command export --package writes"
              + " it. Files of an export by --csv, or of a supplement, are imported by naming them"
              + " one by one.");
    }
    if (form > WholeForm.FORM) {
      throw wrong(
          "package-newer",
          "This package was written by a newer version of the program ("
              + head.path(WholeForm.OWN).path("program").asText()
              + "). Import it with that version.");
    }
  }

  private void checkHistory() throws IOException {
    try (InputStream in = reader.read(history)) {
      HistoryReading reading = new HistoryReading(in);
      while (reading.hasNext()) {
        reading.next();
      }
      if (reading.last() != changes()) {
        throw wrong(
            "history-short",
            "The history ends with change "
                + reading.last()
                + ", and the descriptor names "
                + changes()
                + " changes. Export the other evidence base again.");
      }
    }
  }

  /** Number of its last change, 0 for none. */
  public long changes() {
    return reader.head().path(WholeForm.OWN).path("changes").asLong();
  }

  /** How many studies stand in it. */
  public long studies() {
    return reader.head().path(WholeForm.OWN).path("studies").asLong();
  }

  /**
   * Puts its history into an empty store: numbers, versions, names, reasons, times and contents as
   * they were.
   *
   * @return empty, and nothing was stored, where the store holds changes already
   */
  public Optional<WriteAnswer.Written> restoreInto(DocumentStore store) throws IOException {
    try (InputStream in = reader.read(history)) {
      return store.takeHistory(new HistoryReading(in));
    }
  }

  /** Its studies as they stand, as the sheets of the template. */
  public List<TableFile> sheets() {
    return Export.sheets().stream()
        .map(sheet -> required(sheet + WholeForm.CSV))
        .map(file -> new TableFile(file.path(), () -> reader.read(file)))
        .toList();
  }

  /** What stands beside its studies. */
  public InputStream beside() throws IOException {
    return reader.read(required(DataPackage.BESIDE));
  }

  private PackagedFile required(String path) {
    return reader
        .file(path)
        .orElseThrow(
            () ->
                wrong(
                    "file-missing",
                    "The descriptor names no file " + path + ", which such a package has."));
  }

  private static WrongInputException wrong(String code, String message) {
    return new WrongInputException(
        List.of(new Problem(gapwise.datapackage.PackageWriter.DESCRIPTOR, code, message)));
  }
}
