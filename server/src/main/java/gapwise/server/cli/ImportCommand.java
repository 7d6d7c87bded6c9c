package gapwise.server.cli;

import gapwise.exchange.DataPackage;
import gapwise.intake.Intake;
import gapwise.problem.WrongInputException;
import gapwise.server.home.Home;
import gapwise.table.TableFile;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Set;
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
  /** How files of kept references end, as the export writes them. */
  private static final String REFERENCES = ".jsonl";

  private static final Set<String> BESIDE = Set.of(DataPackage.SEARCHES, DataPackage.FILE);

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE",
      description = "Workbook, or the CSV files and references.jsonl of an export.")
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
    List<Path> lines = files.stream().filter(file -> named(file).endsWith(REFERENCES)).toList();
    List<Path> sheets =
        files.stream()
            .filter(file -> !named(file).endsWith(REFERENCES))
            // What an export writes beside its sheets for other programs.
            .filter(file -> !BESIDE.contains(named(file)))
            .toList();
    String names = String.join(", ", files.stream().map(ImportCommand::named).toList());
    List<TableFile> tables = sheets.stream().map(TableFile::of).toList();
    try (Home open = home.open()) {
      boolean stored =
          tables.isEmpty()
              || TemplateImport.store(
                  open, tables, acknowledge, new Intake.As(who, "import of " + names));
      for (Path file : lines) {
        stored = stored && references(open, file);
      }
      return stored ? Exit.DONE : Exit.WRONG;
    }
  }

  private static String named(Path file) {
    return Objects.requireNonNullElse(file.getFileName(), file).toString();
  }

  private boolean references(Home open, Path file) {
    try (BufferedReader text = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      long written = open.referenceLines().read(text, named(file), who, "import of " + named(file));
      System.err.println(
          named(file) + ": references, loads, searches and decisions new or changed: " + written);
      return true;
    } catch (WrongInputException wrong) {
      wrong.problems().forEach(problem -> System.err.println(problem.line()));
    } catch (IOException | UncheckedIOException unread) {
      System.err.println(
          file + " cannot be read as UTF-8 text. Nothing of it was stored; export it again.");
    }
    return false;
  }
}
