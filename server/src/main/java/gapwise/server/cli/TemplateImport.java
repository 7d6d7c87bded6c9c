package gapwise.server.cli;

import gapwise.curation.ImportRecord;
import gapwise.evidence.rule.Severity;
import gapwise.intake.Intake;
import gapwise.intake.NotedKind;
import gapwise.intake.Taken;
import gapwise.server.job.ChangedStudy;
import gapwise.server.job.ChangesFound;
import gapwise.table.TableFile;
import java.io.IOException;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Takes a filled template in, telling everything on standard error. */
final class TemplateImport {
  private TemplateImport() {}

  /**
   * Stores what is right; tells what is wrong, doubtful or would replace what stands there, and
   * stores nothing otherwise.
   *
   * @return whether it was stored
   */
  static boolean store(Intake intake, List<TableFile> files, ImportWishes wishes, Intake.As as)
      throws IOException {
    try (ChangesFound changes = new ChangesFound(wishes.changes())) {
      Taken taken = intake.take(files, wishes.leaving(Set.of()), as, rows -> {}, changes);
      if (wishes.keep() && taken instanceof Taken.Asks && !changes.open().isEmpty()) {
        changes.open().forEach(change -> tell("Left as it stands: ", change));
        Set<String> left =
            changes.open().stream().map(ChangedStudy::id).collect(Collectors.toSet());
        taken = intake.take(files, wishes.leaving(left), as, rows -> {}, changes);
      }
      return told(taken, changes);
    }
  }

  private static boolean told(Taken taken, ChangesFound changes) {
    if (taken instanceof Taken.Wrong wrong) {
      tell(wrong.kinds());
      System.err.println(wrong.problems().size() + " wrong; nothing was stored.");
      return false;
    }
    tell(changes);
    if (taken instanceof Taken.Asks asks) {
      tell(asks.kinds());
      tellWhatToDo(asks);
      return false;
    }
    if (taken instanceof Taken.Overtaken) {
      System.err.println(
          "Others changed studies so often meanwhile that this import could not be compared with all"
              + " of them. Nothing was stored; import again.");
      return false;
    }
    Taken.Stored stored = (Taken.Stored) taken;
    tell(stored.kinds());
    ImportRecord record = stored.record();
    int left = stored.compared().left().size();
    System.err.println(
        counted(record.saved(), "study", "studies")
            + " added or changed, "
            + record.unchanged()
            + " stood there already, "
            + counted(record.acknowledged().size(), "doubt", "doubts")
            + " acknowledged"
            + (left == 0 ? "." : ", " + counted(left, "study", "studies") + " left alone."));
    return true;
  }

  private static void tellWhatToDo(Taken.Asks asks) {
    if (!asks.open().isEmpty()) {
      System.err.println(
          asks.open().size()
              + " doubtful; nothing was stored. If the papers really say so, import again with"
              + " --acknowledge.");
    }
    if (asks.changes() > 0) {
      System.err.println(
          counted(asks.changes(), "study stands", "studies stand")
              + " here with other content; nothing was stored. If the file is right, import again"
              + " with --replace, or with --replace-study NAME for some of them; with --keep the others"
              + " are left as they stand. Every field that differs: --changes NEW.csv.");
    }
  }

  private static String counted(int number, String one, String many) {
    return number + " " + (number == 1 ? one : many);
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

  private static void tell(ChangesFound changes) {
    changes.agreed().forEach(change -> tell("Replaced: ", change));
    changes.open().forEach(change -> tell("Stands with other content: ", change));
  }

  private static void tell(String start, ChangedStudy change) {
    ChangedStudy.Standing standing = change.standing();
    System.err.println(
        start
            + change.id()
            + " ("
            + (standing.withdrawn() ? "withdrawn" : "version " + standing.version())
            + ", "
            + standing.when()
            + ", "
            + standing.who()
            + ": "
            + standing.why()
            + ")");
    for (ChangedStudy.Line line : change.lines()) {
      System.err.println(
          "  "
              + line.where()
              + ", "
              + line.field()
              + ": '"
              + line.before()
              + "' here, '"
              + line.after()
              + "' in the file");
    }
    if (change.more() > 0) {
      System.err.println("  and " + counted(change.more(), "more field", "more fields"));
    }
    if (change.fields() == 0 && !standing.withdrawn()) {
      System.err.println(
          "  no field of the template, but the order of rows or what it cannot show");
    }
  }
}
