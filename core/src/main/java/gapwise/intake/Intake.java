package gapwise.intake;

import gapwise.curation.EvidenceBase;
import gapwise.curation.ImportInDoubtException;
import gapwise.curation.ImportRecord;
import gapwise.curation.SaveAnswer;
import gapwise.curation.StudiesAt;
import gapwise.evidence.Study;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.KnownEvidence;
import gapwise.exchange.Warning;
import gapwise.table.MadeSheet;
import gapwise.table.TableFile;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.LongConsumer;
import java.util.function.Predicate;

/**
 * Takes filled templates into one evidence base. Every door goes through here, so that page,
 * command and API check the same and ask the same. Safe for use by many threads: one template is
 * compared with the base and stored before the next one is read.
 */
public final class Intake {
  private final EvidenceBase base;

  public Intake(EvidenceBase base) {
    this.base = Objects.requireNonNull(base, "base");
  }

  /**
   * Reads a template, compares it with the whole evidence base, and stores all of it when nothing
   * in it is wrong and every doubt is acknowledged, now or with an earlier import. Otherwise
   * nothing is stored.
   *
   * @param files one workbook, or the CSV files of one template
   * @param acknowledged whether a person lets the doubt of this key stand
   * @param as who brings it and why
   * @param progress told the number of rows read so far, now and then
   * @throws ImportInDoubtException when the store failed so that it cannot be told whether the
   *     import stands
   * @throws RuntimeException any other: nothing was stored
   */
  public Taken take(
      List<TableFile> files, Predicate<String> acknowledged, As as, LongConsumer progress) {
    synchronized (base) {
      Imported read = Import.read(files, known(base.latest()), acknowledged, progress);
      if (read instanceof Imported.Wrong wrong) {
        return new Taken.Wrong(wrong.problems(), wrong.warnings());
      }
      if (read instanceof Imported.NeedsAcknowledgement doubtful) {
        return new Taken.Doubtful(doubtful.studies(), doubtful.open());
      }
      return stored((Imported.Ready) read, as);
    }
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
    synchronized (base) {
      StudiesAt now = base.latest();
      Import.Typed typed = Import.typed(sheets, known(now), settled::containsKey);
      if (!(typed.imported() instanceof Imported.Ready ready) || ready.studies().size() != 1) {
        return new TakenTyped.NotTaken(typed);
      }
      Study study = ready.studies().get(0);
      if (now.study(study.id()).filter(kept -> kept.study().equals(study)).isPresent()) {
        return new TakenTyped.Same();
      }
      List<Warning> asked = ready.warnings().stream().filter(Warning::asks).toList();
      SaveAnswer answer =
          base.save(
              study,
              as.who(),
              as.why(),
              expectedVersion,
              asked.stream().map(Warning::problem).toList(),
              reasons(asked, settled));
      return answer instanceof SaveAnswer.Saved saved
          ? new TakenTyped.Stored(saved.version())
          : new TakenTyped.Overtaken(((SaveAnswer.NotSaved) answer).conflicts());
    }
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

  private Taken.Stored stored(Imported.Ready ready, As as) {
    List<Warning> asked = ready.warnings().stream().filter(Warning::asks).toList();
    ImportRecord record =
        base.saveAll(
            ready.studies().iterator(),
            as.who(),
            as.why(),
            asked.stream().map(Warning::problem).toList(),
            asked.stream().map(Warning::key).toList());
    return new Taken.Stored(
        record,
        ready.studies().stream().map(Study::id).toList(),
        ready.warnings().stream().filter(warning -> !warning.asks()).toList());
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
