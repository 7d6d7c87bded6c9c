package gapwise.server.cli;

import gapwise.datapackage.PackageReader;
import gapwise.datapackage.PackageWriter;
import gapwise.exchange.DataPackage;
import gapwise.intake.Intake;
import gapwise.problem.WrongInputException;
import gapwise.server.home.Records;
import gapwise.whole.WholePackage;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Takes a package of a whole evidence base in, telling everything on standard error. */
final class WholeImport {
  private final Records open;
  private final ImportWishes wishes;
  private final String who;

  WholeImport(Records open, ImportWishes wishes, String who) {
    this.open = open;
    this.wishes = wishes;
    this.who = who;
  }

  /** Whether a file that was named is a package and no sheet of the template. */
  static boolean isPackage(Path file) {
    return Files.isDirectory(file) || PackageWriter.isArchive(file);
  }

  /**
   * Stores all of it with its history where nothing is, else its studies as an import.
   *
   * @return whether it was stored
   */
  boolean take(Path file) throws IOException {
    try (PackageReader reader = PackageReader.open(file)) {
      WholePackage whole = WholePackage.checked(reader);
      if (open.isEmpty() && open.restore(whole)) {
        System.err.println(
            whole.studies()
                + " studies with the whole history of "
                + whole.changes()
                + " changes came in as they were, under the same numbers, names and times.");
        return true;
      }
      System.err.println(
          "There are records here already, so only the studies as they stand in the package, and what"
              + " stands beside them, are compared and brought in. Its history, its records of"
              + " imports and its judgements of certainty stay behind: they belong to versions that"
              + " are not those of this folder.");
      Intake.As as = new Intake.As(who, "import of " + file.getFileName());
      return studies(whole, as) && beside(whole, as);
    } catch (WrongInputException wrong) {
      wrong.problems().forEach(problem -> System.err.println(problem.line()));
      System.err.println("Nothing was stored.");
      return false;
    }
  }

  private boolean studies(WholePackage whole, Intake.As as) throws IOException {
    return whole.studies() == 0
        || TemplateImport.store(new Intake(open.base()), whole.sheets(), wishes, as);
  }

  private boolean beside(WholePackage whole, Intake.As as) throws IOException {
    try (BufferedReader text =
        new BufferedReader(new InputStreamReader(whole.beside(), StandardCharsets.UTF_8))) {
      long written = open.carriedLines().read(text, DataPackage.BESIDE, as.who(), as.why());
      System.err.println(
          DataPackage.BESIDE
              + ": references, searches, choices and decisions new or changed: "
              + written);
      return true;
    } catch (WrongInputException wrong) {
      wrong.problems().forEach(problem -> System.err.println(problem.line()));
      System.err.println(
          "The studies were stored, and nothing of what stands beside them in the package.");
      return false;
    }
  }
}
