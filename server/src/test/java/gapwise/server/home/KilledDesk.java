package gapwise.server.home;

import gapwise.desk.Draft;
import gapwise.desk.DraftCheck;
import gapwise.desk.HandedInDraft;
import gapwise.desk.KeptDraft;
import gapwise.desk.Noted;
import gapwise.desk.SettledDoubt;
import gapwise.desk.Submission;
import gapwise.exchange.Template;
import gapwise.intake.Agreement;
import gapwise.intake.ChangeListener;
import gapwise.intake.Intake;
import gapwise.intake.Taken;
import gapwise.store.StorePlace;
import gapwise.store.database.DatabaseAddress;
import gapwise.table.TableFile;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Begins drafts, hands them in, ends them, imports files and settles what two extractors read, for
 * ever, saying in a line of its own what is done when it is done. Meant to be killed. All studies
 * are invented.
 */
final class KilledDesk {
  /** Studies of one file; an import of fewer is half an import. */
  static final int STUDIES_OF_A_FILE = 5;

  /** Drafts take turns with so many studies, so that most are next versions. */
  private static final int STUDIES_OF_DRAFTS = 7;

  private KilledDesk() {}

  public static void main(String[] arguments) {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    StorePlace place =
        new StorePlace(
            Path.of(arguments[0]),
            Optional.of(arguments[2])
                .filter(url -> !url.isEmpty())
                .map(url -> DatabaseAddress.of(url, Optional.empty())));
    try (Home home = Home.open(place, Clock.systemUTC())) {
      Submission submission = new Submission(home.intake());
      for (int number = Integer.parseInt(arguments[1]); number < Integer.MAX_VALUE; number++) {
        KeptDraft draft = home.drafts().begin(draft(home, number), "desk");
        out.println("draft " + number + " " + draft.id());
        HandedInDraft handed =
            submission.handIn(draft.draft(), new Intake.As("desk", "draft " + number));
        if (!(handed instanceof HandedInDraft.Stored stored)) {
          throw new IllegalStateException("not handed in: " + handed);
        }
        out.println("handed " + number + " " + study(number) + " " + stored.version());
        home.drafts().drop(draft.id());
        out.println("dropped " + number + " " + draft.id());
        takeFile(home, number);
        out.println("import " + number);
        KilledReconciliation.reconcile(home, number);
        out.println("agreed " + number);
      }
    }
  }

  static String study(int number) {
    return "typed" + number % STUDIES_OF_DRAFTS;
  }

  static String title(int number) {
    return "Invented series " + number;
  }

  /** With a doubt that is settled: more limbs than the group has patients. */
  private static Draft draft(Home home, int number) {
    String id = study(number);
    Draft draft =
        home.base()
            .latest()
            .study(id)
            .map(kept -> Draft.of(kept.study(), kept.version()))
            .orElseGet(() -> begun(id));
    int study = draft.rows(Template.STUDIES).get(0).number();
    int outcome = draft.rows(Template.OUTCOMES).get(0).number();
    Draft changed =
        draft
            .withCell(study, "title", title(number), Optional.empty())
            .withCell(outcome, "total", Integer.toString(40 + number), Optional.empty());
    for (Noted one : DraftCheck.of(changed).noted()) {
      if (one.weight() == Noted.Weight.DOUBT) {
        changed =
            changed.withSettled(new SettledDoubt(one.key().orElseThrow(), "AB", "as printed"));
      }
    }
    return changed;
  }

  private static Draft begun(String id) {
    Draft draft = Draft.of(id);
    int study = draft.rows(Template.STUDIES).get(0).number();
    int arm = draft.rows(Template.ARMS).get(0).number();
    return draft
        .withCell(study, "invented", "yes", Optional.empty())
        .withCell(arm, "method", "bone-transport", Optional.empty())
        .withCell(arm, "patients", "32", Optional.empty())
        .withRow(
            Template.OUTCOMES,
            Map.of(
                Template.ARM,
                "A",
                "outcome",
                "primary-union",
                "events",
                "26",
                "unit_counted",
                "limbs"));
  }

  private static void takeFile(Home home, int number) {
    StringBuilder studies = new StringBuilder("study_id,title\r\n");
    StringBuilder arms = new StringBuilder("study_id,arm_id,method\r\n");
    for (int part = 0; part < STUDIES_OF_A_FILE; part++) {
      String id = "file" + number + "-" + part;
      studies.append(id).append(",Invented ").append(id).append("\r\n");
      arms.append(id).append(",A,autograft\r\n");
    }
    Taken taken =
        home.intake()
            .take(
                List.of(file("studies.csv", studies), file("arms.csv", arms)),
                Agreement.ALL,
                new Intake.As("desk", "file " + number),
                rows -> {},
                ChangeListener.NONE);
    if (!(taken instanceof Taken.Stored)) {
      throw new IllegalStateException("not imported: " + taken);
    }
  }

  private static TableFile file(String name, StringBuilder text) {
    return TableFile.of(name, text.toString().getBytes(StandardCharsets.UTF_8));
  }
}
