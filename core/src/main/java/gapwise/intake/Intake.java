package gapwise.intake;

import gapwise.curation.EvidenceBase;
import gapwise.curation.ImportInDoubtException;
import gapwise.curation.ImportNote;
import gapwise.curation.KeptStudy;
import gapwise.curation.SaveAnswer;
import gapwise.curation.StudiesAt;
import gapwise.evidence.Study;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.KnownEvidence;
import gapwise.exchange.Warning;
import gapwise.store.Write;
import gapwise.table.MadeSheet;
import gapwise.table.TableFile;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import java.util.function.LongConsumer;

/**
 * Takes filled templates into one evidence base. Every door goes through here, so that page,
 * command and API check the same and ask the same. Safe for use by many threads and processes: what
 * is stored was compared with the base as it stood in that moment.
 */
public final class Intake {
  /**
   * Comparisons before it is given up: each one in vain means that somebody else's change came
   * through meanwhile.
   */
  private static final int MOST_TRIES = 20;

  private final EvidenceBase base;

  public Intake(EvidenceBase base) {
    this.base = Objects.requireNonNull(base, "base");
  }

  /**
   * Reads a template, compares it with the whole evidence base, and stores all of it when nothing
   * in it is wrong, every doubt is acknowledged, now or with an earlier import, and a person has
   * agreed to every change of a study that stands there. Otherwise nothing is stored. Where
   * anybody, in whatever process, changes a study of the base meanwhile, it is compared again.
   *
   * @param files one workbook, or the CSV files of one template
   * @param agreement what a person has agreed to
   * @param as who brings it and why
   * @param progress told the number of rows read so far, now and then
   * @param listener told what would change
   * @throws ImportInDoubtException when the store failed so that it cannot be told whether the
   *     import stands
   * @throws RuntimeException any other: nothing was stored
   */
  public Taken take(
      List<TableFile> files,
      Agreement agreement,
      As as,
      LongConsumer progress,
      ChangeListener listener) {
    synchronized (base) {
      for (int attempt = 0; attempt < MOST_TRIES; attempt++) {
        Optional<Taken> taken = tryToTake(files, agreement, as, progress, listener);
        if (taken.isPresent()) {
          return taken.get();
        }
      }
      return new Taken.Overtaken();
    }
  }

  /** Empty where the base has changed before it could be stored. */
  private Optional<Taken> tryToTake(
      List<TableFile> files,
      Agreement agreement,
      As as,
      LongConsumer progress,
      ChangeListener listener) {
    StudiesAt now = base.latest();
    Imported read = Import.read(files, known(now), agreement.left(), agreement.doubts(), progress);
    if (read instanceof Imported.Wrong wrong) {
      return Optional.of(new Taken.Wrong(wrong.problems(), wrong.warnings()));
    }
    Comparison comparison = new Comparison(now, agreement, listener).with(studies(read));
    if (read instanceof Imported.NeedsAcknowledgement doubtful) {
      return Optional.of(new Taken.Asks(doubtful.open(), comparison.open(), comparison.compared()));
    }
    return comparison.open() > 0
        ? Optional.of(new Taken.Asks(List.of(), comparison.open(), comparison.compared()))
        : stored((Imported.Ready) read, as, now, comparison.compared());
  }

  private static List<Study> studies(Imported read) {
    return read instanceof Imported.NeedsAcknowledgement doubtful
        ? doubtful.read()
        : ((Imported.Ready) read).studies();
  }

  /**
   * The same for one study that was typed and stands in no file.
   *
   * @param sheets the sheets of a template with its rows
   * @param settled doubts that a person lets stand: by whom and why, by their keys
   * @param as who brings it and why
   * @param expectedVersion the version of the study that it follows, 0 for a new one
   */
  public TakenTyped takeTyped(
      List<MadeSheet> sheets, Map<String, String> settled, As as, int expectedVersion) {
    return takeTyped(sheets, settled, as, expectedVersion, version -> List.of());
  }

  /**
   * The same with what else is written in the same step, or not at all; it is written too where the
   * study stands there already with the same content.
   *
   * @param beside given the version that the study has then
   */
  public TakenTyped takeTyped(
      List<MadeSheet> sheets,
      Map<String, String> settled,
      As as,
      int expectedVersion,
      IntFunction<List<Write>> beside) {
    synchronized (base) {
      TakenTyped taken = tryToTakeTyped(sheets, settled, as, expectedVersion, beside);
      for (int again = 1; again < MOST_TRIES && isOvertakenByOthers(taken); again++) {
        taken = tryToTakeTyped(sheets, settled, as, expectedVersion, beside);
      }
      return taken;
    }
  }

  /** Whether other studies alone have changed, so that comparing again can help. */
  private static boolean isOvertakenByOthers(TakenTyped taken) {
    return taken instanceof TakenTyped.Overtaken overtaken
        && overtaken.conflicts().stream().allMatch(one -> one.expectedVersion().isEmpty());
  }

  private TakenTyped tryToTakeTyped(
      List<MadeSheet> sheets,
      Map<String, String> settled,
      As as,
      int expectedVersion,
      IntFunction<List<Write>> beside) {
    StudiesAt now = base.latest();
    Import.Typed typed = Import.typed(sheets, known(now), settled::containsKey);
    if (!(typed.imported() instanceof Imported.Ready ready) || ready.studies().size() != 1) {
      return new TakenTyped.NotTaken(typed);
    }
    Study study = ready.studies().get(0);
    List<Warning> asked = ready.warnings().stream().filter(Warning::asks).toList();
    ImportNote note = note(as, asked, reasons(asked, settled));
    Optional<KeptStudy> same = now.study(study.id()).filter(kept -> kept.study().equals(study));
    if (same.isPresent()) {
      return same(same.get().stamp().version(), beside, note, now);
    }
    SaveAnswer answer =
        base.save(study, expectedVersion, note, now, beside.apply(expectedVersion + 1));
    return answer instanceof SaveAnswer.Saved saved
        ? new TakenTyped.Stored(saved.version())
        : new TakenTyped.Overtaken(((SaveAnswer.NotSaved) answer).conflicts());
  }

  private TakenTyped same(
      int version, IntFunction<List<Write>> beside, ImportNote note, StudiesAt now) {
    List<Write> writes = beside.apply(version);
    SaveAnswer answer =
        writes.isEmpty()
            ? new SaveAnswer.Saved(version, now.change())
            : base.saveBeside(version, writes, note, now);
    return answer instanceof SaveAnswer.Saved
        ? new TakenTyped.Same()
        : new TakenTyped.Overtaken(((SaveAnswer.NotSaved) answer).conflicts());
  }

  private static ImportNote note(As as, List<Warning> asked, Map<String, String> reasons) {
    return new ImportNote(
        as.who(),
        as.why(),
        asked.stream().map(Warning::problem).toList(),
        asked.stream().map(Warning::key).toList(),
        reasons);
  }

  private static Map<String, String> reasons(List<Warning> asked, Map<String, String> settled) {
    Map<String, String> reasons = new TreeMap<>();
    asked.forEach(
        warning ->
            reasons.put(
                warning.key(), Objects.requireNonNull(settled.get(warning.key()), "settled")));
    return reasons;
  }

  /** One state of the base as a reading asks it; see {@link #takeTyped}. */
  public KnownEvidence known() {
    return known(base.latest());
  }

  /**
   * Who brings a template, and why, for the history.
   *
   * @param who name or initials
   * @param why reason in words
   */
  public record As(String who, String why) {
    public As {
      Objects.requireNonNull(who, "who");
      Objects.requireNonNull(why, "why");
    }
  }

  private Optional<Taken> stored(
      Imported.Ready ready, As as, StudiesAt comparedWith, Compared compared) {
    List<Warning> asked = ready.warnings().stream().filter(Warning::asks).toList();
    return base.saveAll(ready.studies().iterator(), note(as, asked, Map.of()), comparedWith)
        .map(
            record ->
                new Taken.Stored(
                    record,
                    compared,
                    ready.warnings().stream().filter(warning -> !warning.asks()).toList()));
  }

  /** One state of the base. A damaged record is passed over: importing it again mends it. */
  private static KnownEvidence known(StudiesAt studies) {
    return new KnownEvidence() {
      @Override
      public void forEach(Consumer<? super Study> consumer) {
        studies.forEachSound(kept -> consumer.accept(kept.study()));
      }

      @Override
      public Set<String> acknowledged() {
        return studies.acknowledgedKeys();
      }
    };
  }
}
