package gapwise.exchange;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Writes the blank templates and their description, as they stand in the folder data-templates. */
public final class TemplateFiles {
  private static final String WORKBOOK = "extraction-template.xlsx";
  private static final String DESCRIPTOR = "datapackage.json";

  private TemplateFiles() {}

  /**
   * Writes them into a folder, which is made if need be.
   *
   * @param arguments the folder
   */
  public static void main(String[] arguments) throws IOException {
    if (arguments.length != 1) {
      throw new IllegalArgumentException("expected one argument, the folder to write into");
    }
    write(Path.of(arguments[0]));
  }

  /** Writes the workbook, one CSV file for each sheet, and datapackage.json. */
  public static void write(Path folder) throws IOException {
    Files.createDirectories(folder);
    try (OutputStream target = Files.newOutputStream(folder.resolve(WORKBOOK))) {
      Export.workbook(List.of(), target);
    }
    for (String sheet : Export.sheets()) {
      StringBuilder text = new StringBuilder();
      Export.csv(List.of(), sheet, text);
      Files.writeString(folder.resolve(sheet + ".csv"), text, StandardCharsets.UTF_8);
    }
    Files.writeString(folder.resolve(DESCRIPTOR), DataPackage.json(), StandardCharsets.UTF_8);
  }
}
