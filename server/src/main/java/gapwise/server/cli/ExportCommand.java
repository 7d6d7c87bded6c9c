package gapwise.server.cli;

import gapwise.evidence.Study;
import gapwise.exchange.Export;
import gapwise.problem.WrongInputException;
import gapwise.server.home.Records;
import gapwise.store.OwnerOnly;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes all studies into the template. */
@Command(
    name = "export",
    description = "Write all studies into a workbook, or CSV files, that can be imported again.",
    mixinStandardHelpOptions = true)
public final class ExportCommand implements Callable<Integer> {
  @Parameters(
      paramLabel = "FILE",
      description = "New file, ending in .xlsx; with --csv a new folder.")
  private Path file;

  @Option(
      names = "--csv",
      description =
          "Write one CSV file for each sheet; they also hold texts too long for a workbook.")
  private boolean csv;

  @Mixin private ExistingHomeOption home;

  @Override
  public Integer call() throws IOException {
    if (Files.exists(file)) {
      System.err.println(file + " is there already; name a new " + (csv ? "folder." : "file."));
      return Exit.WRONG;
    }
    List<Study> studies = new ArrayList<>();
    try (Records records = home.records()) {
      records.studies().forEach(kept -> studies.add(kept.study()));
    }
    try {
      write(studies);
    } catch (WrongInputException wrong) {
      wrong.problems().forEach(problem -> System.err.println(problem.line()));
      System.err.println("Nothing was written.");
      return Exit.WRONG;
    }
    System.err.println(studies.size() + " studies written to " + file + ".");
    return Exit.DONE;
  }

  private void write(List<Study> studies) throws IOException {
    if (!csv) {
      // Made whole before the file, so that a refusal leaves none behind.
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      Export.workbook(studies, bytes);
      try (OutputStream target = OwnerOnly.newFile(file)) {
        bytes.writeTo(target);
      }
      return;
    }
    OwnerOnly.folders(file);
    for (String sheet : Export.sheets()) {
      try (Writer target =
          new OutputStreamWriter(
              OwnerOnly.newFile(file.resolve(sheet + ".csv")), StandardCharsets.UTF_8)) {
        Export.csv(studies, sheet, target);
      }
    }
  }
}
