package gapwise.server.cli;

import gapwise.curation.ImportRecord;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.Warning;
import gapwise.problem.Problem;
import gapwise.server.home.Home;
import gapwise.table.TableFile;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Reads a filled template and stores it, telling everything on standard error. */
final class TemplateImport {
  private TemplateImport() {}

  /**
   * Reads and checks.
   *
   * @param acknowledge whether every doubt is let stand
   */
  static Imported read(List<TableFile> files, boolean acknowledge) {
    Imported read = Import.read(files, Set.of(), rows -> {});
    if (acknowledge && read instanceof Imported.NeedsAcknowledgement doubtful) {
      Set<String> keys = doubtful.open().stream().map(Warning::key).collect(Collectors.toSet());
      return Import.read(files, keys, rows -> {});
    }
    return read;
  }

  /** Stores what is ready; tells what is wrong or doubtful and stores nothing otherwise. */
  static boolean store(Home home, Imported read, String who, String why) {
    if (read instanceof Imported.Wrong wrong) {
      wrong.problems().forEach(problem -> System.err.println(problem.line()));
      System.err.println(wrong.problems().size() + " wrong; nothing was stored.");
      return false;
    }
    if (read instanceof Imported.NeedsAcknowledgement doubtful) {
      doubtful.open().forEach(warning -> System.err.println(warning.problem().line()));
      System.err.println(
          doubtful.open().size()
              + " doubtful; nothing was stored. If the papers really say so, import again with"
              + " --acknowledge.");
      return false;
    }
    Imported.Ready ready = (Imported.Ready) read;
    List<Problem> acknowledged = ready.warnings().stream().map(Warning::problem).toList();
    ImportRecord record = home.base().saveAll(ready.studies().iterator(), who, why, acknowledged);
    System.err.println(
        record.saved()
            + " studies added or changed, "
            + record.unchanged()
            + " stood there already, "
            + acknowledged.size()
            + " doubts acknowledged.");
    home.notice().ifPresent(System.err::println);
    return true;
  }
}
