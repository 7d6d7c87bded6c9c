package gapwise.server.cli;

import gapwise.evidence.Study;
import gapwise.exchange.DataPackage;
import gapwise.exchange.Export;
import gapwise.problem.WrongInputException;
import gapwise.reference.format.SearchDone;
import gapwise.reference.format.SearchLogCsv;
import gapwise.reference.kept.KeptSearch;
import gapwise.server.home.Records;
import gapwise.store.OwnerOnly;
import gapwise.whole.StudyHeads;
import gapwise.whole.WholeWriter;
import java.io.BufferedWriter;
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
    description =
        "Write all studies into a workbook, or CSV files, or the whole evidence base into a package,"
            + " that can be imported again.",
    mixinStandardHelpOptions = true)
public final class ExportCommand implements Callable<Integer> {
  @Parameters(
      paramLabel = "FILE",
      description =
          "New file, ending in .xlsx; with --csv a new folder; with --package a new folder, or a new"
              + " archive where the name ends in .zip.")
  private Path file;

  @Option(
      names = "--csv",
      description =
          "Write one CSV file for each sheet; they also hold texts too long for a workbook.")
  private boolean csv;

  @Option(
      names = "--package",
      description =
          "Write the whole evidence base with its history as a Data Package with checksums. Imported"
              + " into an empty folder it gives the same evidence base again.")
  private boolean whole;

  @Mixin private ExistingHomeOption home;

  @Override
  public Integer call() throws IOException {
    if (Files.exists(file)) {
      System.err.println(file + " is there already; name a new " + (csv ? "folder." : "file."));
      return Exit.WRONG;
    }
    if (csv && whole) {
      System.err.println("--package holds the CSV files of --csv; name one of the two.");
      return Exit.WRONG;
    }
    return whole ? whole() : studies();
  }

  private int whole() throws IOException {
    try (Records open = home.records()) {
      WholeWriter.Written written = open.writeWhole(file, Version.NUMBER);
      System.err.println(
          "The evidence base with "
              + written.studies()
              + " studies and its history of "
              + written.changes()
              + " changes was written to "
              + file
              + ". Drafts and papers as files are no part of it.");
      return Exit.DONE;
    } catch (WrongInputException wrong) {
      wrong.problems().forEach(problem -> System.err.println(problem.line()));
      System.err.println("Nothing was written.");
      return Exit.WRONG;
    }
  }

  private int studies() throws IOException {
    List<Study> studies = new ArrayList<>();
    List<StudyHeads.Head> heads = new ArrayList<>();
    int beside;
    try (Records open = home.records()) {
      open.studies()
          .forEach(
              kept -> {
                studies.add(kept.study());
                heads.add(new StudyHeads.Head(kept.study().id(), kept.stamp()));
              });
      write(studies);
      beside = csv ? beside(open, heads) : kept(open);
    } catch (WrongInputException wrong) {
      wrong.problems().forEach(problem -> System.err.println(problem.line()));
      System.err.println("Nothing was written.");
      return Exit.WRONG;
    }
    System.err.println(studies.size() + " studies written to " + file + ".");
    if (beside > 0) {
      System.err.println(
          csv
              ? beside
                  + " references, searches, choices and decisions beside them are in "
                  + DataPackage.BESIDE
                  + "."
              : beside
                  + " kept references have no place in a workbook; export with --csv to take them"
                  + " along.");
    }
    return Exit.DONE;
  }

  private static int kept(Records open) {
    int[] kept = {0};
    open.referenceBase().forEach(reference -> kept[0]++);
    return kept[0];
  }

  /** Writes what stands beside the studies, where there is any, and which versions these are. */
  private int beside(Records open, List<StudyHeads.Head> heads) throws IOException {
    List<SearchDone> searches =
        open.referenceBase().searches().stream().map(KeptSearch::search).toList();
    int lines;
    try (Writer target = writer(DataPackage.BESIDE);
        Writer log = writer(DataPackage.SEARCHES);
        Writer versions = writer(DataPackage.HEADS);
        Writer descriptor = writer(DataPackage.FILE)) {
      lines = open.carriedLines().write(target);
      SearchLogCsv.write(searches, log);
      StudyHeads.write(heads, versions);
      descriptor.write(DataPackage.ofExport());
    }
    return lines;
  }

  private Writer writer(String name) throws IOException {
    return new BufferedWriter(
        new OutputStreamWriter(OwnerOnly.newFile(file.resolve(name)), StandardCharsets.UTF_8));
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
