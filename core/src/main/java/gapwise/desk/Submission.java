package gapwise.desk;

import gapwise.exchange.Import;
import gapwise.intake.Intake;
import gapwise.intake.TakenTyped;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

/** Hands a draft in: by the same door as every filled template. */
public final class Submission {
  private final Intake intake;

  public Submission(Intake intake) {
    this.intake = Objects.requireNonNull(intake, "intake");
  }

  /**
   * Makes a draft evidence where nothing in it is wrong, each doubt is settled, and the study is
   * still at the version that the draft was begun from. The draft itself stays.
   *
   * @param as who hands it in, and why
   */
  public HandedInDraft handIn(Draft draft, Intake.As as) {
    DraftSheets sheets = new DraftSheets(draft);
    Map<String, String> settled =
        draft.settled().stream()
            .collect(Collectors.toMap(SettledDoubt::key, SettledDoubt::line, (a, b) -> b));
    TakenTyped taken = intake.takeTyped(sheets.sheets(), settled, as, draft.baseVersion());
    if (taken instanceof TakenTyped.Stored stored) {
      return new HandedInDraft.Stored(stored.version());
    }
    if (taken instanceof TakenTyped.Overtaken overtaken) {
      return new HandedInDraft.Overtaken(overtaken.conflicts());
    }
    if (taken instanceof TakenTyped.NotTaken not) {
      Import.Typed typed = not.typed();
      return new HandedInDraft.NotYet(DraftCheck.told(draft, sheets, typed));
    }
    return new HandedInDraft.Same();
  }
}
