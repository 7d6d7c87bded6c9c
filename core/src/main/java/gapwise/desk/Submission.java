package gapwise.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.exchange.Import;
import gapwise.exchange.Template;
import gapwise.intake.Intake;
import gapwise.intake.TakenTyped;
import gapwise.store.Write;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.IntFunction;
import java.util.stream.Collectors;

/** Hands a draft in: by the same door as every filled template. */
public final class Submission {
  private static final String STATUS = "status";

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
    DraftCheck claimed = claimed(draft);
    if (claimed.count(Noted.Weight.IMPOSSIBLE) > 0) {
      return new HandedInDraft.NotYet(claimed);
    }
    return handIn(draft, as, version -> List.of());
  }

  /** One person cannot say that two have agreed: that is what a reconciliation is for. */
  private static DraftCheck claimed(Draft draft) {
    List<Noted> noted =
        draft.rows(Template.STUDIES).stream()
            .filter(row -> row.text(STATUS).equals(ExtractionStatus.AGREED.code()))
            .map(
                row ->
                    new Noted(
                        Noted.Weight.IMPOSSIBLE,
                        OptionalInt.of(row.number()),
                        List.of(STATUS),
                        "agreed-by-one",
                        say("desk.agreed-by-one"),
                        Optional.empty()))
            .toList();
    return new DraftCheck(noted, Optional.empty());
  }

  /**
   * The same with what else is written in the same step, or not at all.
   *
   * @param beside given the version that the study has then
   */
  public HandedInDraft handIn(Draft draft, Intake.As as, IntFunction<List<Write>> beside) {
    DraftSheets sheets = new DraftSheets(draft);
    Map<String, String> settled =
        draft.settled().stream()
            .collect(Collectors.toMap(SettledDoubt::key, SettledDoubt::line, (a, b) -> b));
    TakenTyped taken = intake.takeTyped(sheets.sheets(), settled, as, draft.baseVersion(), beside);
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
