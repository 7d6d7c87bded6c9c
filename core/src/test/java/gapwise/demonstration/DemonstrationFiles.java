package gapwise.demonstration;

import gapwise.evidence.Study;
import gapwise.exchange.Export;
import java.io.IOException;
import java.io.OutputStream;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Writes the invented studies as a filled template, one workbook and the same as CSV files. The
 * command stands in {@code docs/demonstration.md}.
 */
public final class DemonstrationFiles {
  static final String WORKBOOK = "gapwise-demonstration.xlsx";

  private DemonstrationFiles() {}

  /**
   * Writes all files anew.
   *
   * @param arguments the folder to write into, which is made if it is not there
   */
  public static void main(String[] arguments) throws IOException {
    if (arguments.length != 1) {
      System.err.println("Expected one argument: the folder to write the demonstration into.");
      System.exit(2);
    }
    write(Path.of(arguments[0]));
  }

  static void write(Path folder) throws IOException {
    List<Study> studies = DemonstrationEvidence.studies();
    Files.createDirectories(folder);
    try (OutputStream workbook = Files.newOutputStream(folder.resolve(WORKBOOK))) {
      Export.workbook(studies, workbook);
    }
    for (String sheet : Export.sheets()) {
      try (Writer csv =
          Files.newBufferedWriter(folder.resolve(sheet + ".csv"), StandardCharsets.UTF_8)) {
        Export.csv(studies, sheet, csv);
      }
    }
  }
}
