package gapwise.server.cli;

import gapwise.intake.Intake;
import gapwise.server.home.Home;
import gapwise.table.TableFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Imports a filled template. */
@Command(
    name = "import",
    description = "Check a filled workbook, or CSV files, and store all of it or nothing.",
    mixinStandardHelpOptions = true)
public final class ImportCommand implements Callable<Integer> {
  @Parameters(arity = "1..*", paramLabel = "FILE", description = "Workbook, or the CSV files.")
  private List<Path> files;

  @Mixin private HomeOption home;

  @Option(
      names = "--acknowledge",
      description = "Let every doubtful value stand, after you looked each up in its paper.")
  private boolean acknowledge;

  @Option(
      names = "--who",
      description = "Who imports; kept in the history. Default: ${DEFAULT-VALUE}")
  private String who = System.getProperty("user.name", "someone");

  @Override
  public Integer call() {
    List<Path> absent = files.stream().filter(file -> !Files.isReadable(file)).toList();
    if (!absent.isEmpty()) {
      absent.forEach(file -> System.err.println("There is no readable file " + file + "."));
      return Exit.WRONG;
    }
    String names = String.join(", ", files.stream().map(f -> "" + f.getFileName()).toList());
    List<TableFile> tables = files.stream().map(TableFile::of).toList();
    try (Home open = home.open()) {
      boolean stored =
          TemplateImport.store(open, tables, acknowledge, new Intake.As(who, "import of " + names));
      return stored ? Exit.DONE : Exit.WRONG;
    }
  }
}
