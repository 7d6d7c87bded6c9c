package gapwise.server.cli;

import gapwise.curation.ImportRecord;
import gapwise.evidence.rule.Severity;
import gapwise.intake.Intake;
import gapwise.intake.NotedKind;
import gapwise.intake.Taken;
import gapwise.server.home.Home;
import gapwise.table.TableFile;
import java.util.List;

/** Takes a filled template in, telling everything on standard error. */
final class TemplateImport {
  private TemplateImport() {}

  /**
   * Stores what is right; tells what is wrong or doubtful and stores nothing otherwise.
   *
   * @param acknowledge whether every doubt is let stand
   * @return whether it was stored
   */
  static boolean store(Home home, List<TableFile> files, boolean acknowledge, Intake.As as) {
    Taken taken = new Intake(home.base()).take(files, key -> acknowledge, as, rows -> {});
    if (taken instanceof Taken.Wrong wrong) {
      tell(wrong.kinds());
      System.err.println(wrong.problems().size() + " wrong; nothing was stored.");
      return false;
    }
    if (taken instanceof Taken.Doubtful doubtful) {
      tell(doubtful.kinds());
      System.err.println(
          doubtful.open().size()
              + " doubtful; nothing was stored. If the papers really say so, import again with"
              + " --acknowledge.");
      return false;
    }
    Taken.Stored stored = (Taken.Stored) taken;
    tell(stored.kinds());
    ImportRecord record = stored.record();
    System.err.println(
        record.saved()
            + (record.saved() == 1 ? " study" : " studies")
            + " added or changed, "
            + record.unchanged()
            + " stood there already, "
            + record.acknowledged().size()
            + (record.acknowledged().size() == 1 ? " doubt" : " doubts")
            + " acknowledged.");
    home.notice().ifPresent(System.err::println);
    return true;
  }

  private static String start(Severity severity) {
    return switch (severity) {
      case IMPOSSIBLE -> "Wrong: ";
      case DOUBTFUL -> "Doubtful: ";
      case PROPOSED -> "To be confirmed: ";
    };
  }

  /** One kind under the other, each with its places, so that a person looks up one question. */
  private static void tell(List<NotedKind> kinds) {
    for (NotedKind kind : kinds) {
      System.err.println(start(kind.severity()) + kind.sentence() + " (" + kind.all().size() + ")");
      kind.all().forEach(noted -> System.err.println("  " + noted.line()));
    }
  }
}
