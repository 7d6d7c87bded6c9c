package gapwise.server.cli;

import gapwise.exchange.DataPackage;
import gapwise.intake.Intake;
import gapwise.problem.WrongInputException;
import gapwise.server.home.Records;
import gapwise.table.TableFile;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Imports a filled template. */
@Command(
    name = "import",
    description = {
      "Check a filled workbook, or CSV files, and store all of it or nothing. A server may have the"
          + " same folder open; it shows the studies within two seconds.",
      "A package that export --package wrote goes into an empty folder with its whole history. Where"
          + " there are records already, its studies come in as those of any file, without their"
          + " history.",
      "Ends with 0 when it is stored; with 2 when something is wrong, doubtful or would replace what"
          + " stands there, and nothing is stored; with 1 when it broke off."
    },
    mixinStandardHelpOptions = true)
public final class ImportCommand implements Callable<Integer> {
  /** How files of what stands beside the studies end, as the export writes them. */
  private static final String REFERENCES = ".jsonl";

  private static final Set<String> BESIDE =
      Set.of(DataPackage.SEARCHES, DataPackage.FILE, DataPackage.HEADS);

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE",
      description =
          "Workbook, or the CSV files and beside-studies.jsonl of an export, or one package: its"
              + " folder or archive (.zip).")
  private List<Path> files;

  @Mixin private HomeOption home;

  @Option(
      names = "--acknowledge",
      description = "Let every doubtful value stand, after you looked each up in its paper.")
  private boolean acknowledge;

  @Option(
      names = "--replace",
      description =
          "Let every study of the file replace what stands here under its name, after you looked at"
              + " what differs. The old version stays in the history.")
  private boolean replace;

  @Option(
      names = "--replace-study",
      paramLabel = "NAME",
      description = "The same for one study; may be given several times.")
  private List<String> replaced = List.of();

  @Option(
      names = "--keep",
      description =
          "Leave the studies as they stand that differ and are not replaced, and import the rest.")
  private boolean keep;

  @Option(
      names = "--changes",
      paramLabel = "CSV",
      description = "New file for every field that differs; twenty of a study are printed.")
  private Optional<Path> changes = Optional.empty();

  @Option(
      names = "--who",
      description = "Who imports; kept in the history. Default: ${DEFAULT-VALUE}")
  private String who = System.getProperty("user.name", "someone");

  @Override
  public Integer call() throws IOException {
    if (changes.isPresent() && Files.exists(changes.get())) {
      System.err.println(changes.get() + " is there already; name a new file.");
      return Exit.WRONG;
    }
    List<Path> absent = files.stream().filter(file -> !Files.isReadable(file)).toList();
    if (!absent.isEmpty()) {
      absent.forEach(file -> System.err.println("There is no readable file " + file + "."));
      return Exit.WRONG;
    }
    if (files.size() == 1 && WholeImport.isPackage(files.get(0))) {
      try (Records open = home.records()) {
        return new WholeImport(open, wishes(), who).take(files.get(0)) ? Exit.DONE : Exit.WRONG;
      }
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
    try (Records open = home.records()) {
      boolean stored =
          tables.isEmpty()
              || TemplateImport.store(
                  new Intake(open.base()),
                  tables,
                  wishes(),
                  new Intake.As(who, "import of " + names));
      for (Path file : lines) {
        stored = stored && references(open, file);
      }
      return stored ? Exit.DONE : Exit.WRONG;
    }
  }

  private ImportWishes wishes() {
    return new ImportWishes(acknowledge, replace, Set.copyOf(replaced), keep, changes);
  }

  private static String named(Path file) {
    return Objects.requireNonNullElse(file.getFileName(), file).toString();
  }

  private boolean references(Records open, Path file) {
    try (BufferedReader text = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      long written = open.carriedLines().read(text, named(file), who, "import of " + named(file));
      System.err.println(
          named(file) + ": references, searches, choices and decisions new or changed: " + written);
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
