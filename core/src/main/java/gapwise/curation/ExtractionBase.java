package gapwise.curation;

import gapwise.extraction.Extraction;
import gapwise.extraction.FieldChoice;
import gapwise.extraction.SameRow;
import gapwise.extraction.Side;
import gapwise.extraction.TwiceRead;
import gapwise.reference.kept.KeptJson;
import gapwise.screening.Reader;
import gapwise.store.DocumentStore;
import gapwise.store.DocumentVersion;
import gapwise.store.Write;
import gapwise.store.WriteAnswer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Keeps papers that two people extract apart: who reads what, what each handed in, and what was
 * settled, each with its whole history. What one person extracted stands under her own name, and
 * each step of a paper is kept only upon the state of it that its maker saw. Safe for use by many
 * threads.
 */
public final class ExtractionBase {
  /** Kind of the documents that say who reads a paper and how far it is; their key is the study. */
  public static final String PAPER = "extraction-paper";

  /** Kind of the documents that hold what one person extracted. */
  public static final String EXTRACTION = "extraction";

  /** Kind of the documents that hold what was settled of one field. */
  public static final String CHOICE = "extraction-choice";

  /** Kind of the documents that hold what was said of two rows. */
  public static final String ROWS = "extraction-rows";

  /** Tries before giving up; each in vain means that somebody else's choice came through. */
  private static final int MOST_TRIES = 20;

  private final DocumentStore store;

  public ExtractionBase(DocumentStore store) {
    this.store = Objects.requireNonNull(store, "store");
  }

  /**
   * A paper as it is kept.
   *
   * @param version of its document
   */
  public record Kept(TwiceRead paper, int version) {}

  /** The paper of a study. */
  public Optional<Kept> find(String study) {
    return study.isBlank()
        ? Optional.empty()
        : store.latest(PAPER, study).filter(one -> !one.damaged()).flatMap(ExtractionBase::kept);
  }

  private static Optional<Kept> kept(DocumentVersion document) {
    return document
        .json()
        .map(json -> new Kept(KeptJson.read(json, TwiceRead.class), document.version()));
  }

  /**
   * Opens a paper, if none of this study is open.
   *
   * @return whether it was
   */
  public boolean open(TwiceRead paper) {
    return keep(paper, 0, List.of(), paper.opened().who(), "opened to be extracted twice");
  }

  /**
   * Keeps what one person extracted, upon the state of the paper that was seen.
   *
   * @return false where the paper has changed meanwhile; nothing was kept then
   */
  public boolean handIn(Kept seen, Extraction extraction, String why) {
    int before = version(EXTRACTION, extraction.key());
    Write write =
        Write.put(EXTRACTION, extraction.key(), KeptJson.write(extraction)).expecting(before);
    TwiceRead paper =
        seen.paper()
            .with(new TwiceRead.HandedIn(extraction.reader(), before + 1, extraction.when()));
    return keep(paper, seen.version(), List.of(write), extraction.reader(), why);
  }

  /** Begins the reconciliation; false where the paper has changed meanwhile. */
  public boolean begin(Kept seen, TwiceRead.Settling settling) {
    return keep(
        seen.paper().with(settling),
        seen.version(),
        List.of(),
        settling.who(),
        "began to settle what differs");
  }

  /** The write that ends a reconciliation; it goes with the study that came of it. */
  public Write end(Kept seen, TwiceRead.Finished finished) {
    return Write.put(PAPER, seen.paper().study(), KeptJson.write(seen.paper().with(finished)))
        .expecting(seen.version());
  }

  private boolean keep(TwiceRead paper, int seen, List<Write> beside, Reader who, String why) {
    List<Write> writes = new ArrayList<>(beside);
    writes.add(Write.put(PAPER, paper.study(), KeptJson.write(paper)).expecting(seen));
    return store.write(writes, who.name(), why).written().isPresent();
  }

  /**
   * What one side extracted, as it was handed in last; empty before.
   *
   * <p>Whoever asks sees to it that nobody is shown the other's before {@link
   * TwiceRead#isOpenToAll}.
   */
  public Optional<Extraction> extraction(TwiceRead paper, Side side) {
    return paper
        .handedIn(side)
        .flatMap(one -> extraction(Extraction.key(paper.study(), one.reader()), one));
  }

  /** The one of that moment: where it was carried here, it has another version than at home. */
  private Optional<Extraction> extraction(String key, TwiceRead.HandedIn one) {
    return Stream.of(store.latest(EXTRACTION, key), store.version(EXTRACTION, key, one.version()))
        .flatMap(Optional::stream)
        .filter(document -> !document.damaged())
        .flatMap(document -> document.json().stream())
        .map(json -> KeptJson.read(json, Extraction.class))
        .filter(extraction -> extraction.when().equals(one.when()))
        .findFirst();
  }

  private int version(String kind, String key) {
    return store.latest(kind, key).map(DocumentVersion::version).orElse(0);
  }

  /**
   * Keeps choices that belong together, if nobody has settled any of them since they were seen, and
   * the paper is still being settled. The paper gets a new version too, so that an end that was
   * worked out before is not kept.
   *
   * @param seen the versions of the choices that were seen, by their difference, 0 for none
   * @return whether they were kept
   */
  public boolean settle(String study, List<FieldChoice> choices, Map<String, Integer> seen) {
    List<Write> writes = new ArrayList<>();
    for (FieldChoice choice : choices) {
      int version = seen.getOrDefault(choice.difference(), 0);
      writes.add(Write.put(CHOICE, choice.key(), KeptJson.write(choice)).expecting(version));
    }
    FieldChoice first = choices.get(0);
    return whileSettled(
        study, writes, first.who(), first.why().isBlank() ? "one alone had read it" : first.why());
  }

  /** Keeps what was said of two rows; false where the paper is not being settled any more. */
  public boolean say(SameRow rows) {
    Write write = Write.put(ROWS, rows.key(), KeptJson.write(rows));
    String why = rows.same() ? "two rows tell of the same" : "two rows do not tell of the same";
    return whileSettled(rows.study(), List.of(write), rows.who(), why);
  }

  private boolean whileSettled(String study, List<Write> writes, Reader who, String why) {
    for (int attempt = 0; attempt < MOST_TRIES; attempt++) {
      Optional<Kept> now =
          find(study).filter(kept -> kept.paper().stage() == TwiceRead.Stage.BEING_SETTLED);
      if (now.isEmpty()) {
        return false;
      }
      List<Write> all = new ArrayList<>(writes);
      all.add(
          Write.put(PAPER, study, KeptJson.write(now.get().paper()))
              .expecting(now.get().version()));
      WriteAnswer answer = store.write(all, who.name(), why);
      if (answer.written().isPresent()) {
        return true;
      }
      if (answer.conflicts().stream().anyMatch(one -> !one.id().kind().equals(PAPER))) {
        return false;
      }
    }
    return false;
  }

  /** What has changed after a change. */
  public interface Changes {
    /** A paper is as far as it says. */
    void paper(Kept paper);

    /** Something was settled. */
    void choice(FieldChoice choice, int version);

    /** Something was said of two rows. */
    void rows(SameRow rows);
  }

  /** Passes on everything as it stands. */
  public void forEach(Changes taker) {
    for (String kind : List.of(PAPER, CHOICE, ROWS)) {
      store.forEachLatest(kind, document -> tell(document, taker));
    }
  }

  /**
   * Passes on what was written after a change.
   *
   * @return the number of the last change that was passed on
   */
  public long changesAfter(long change, Changes taker) {
    long[] last = {change};
    store.changesAfter(
        change,
        document -> {
          last[0] = Math.max(last[0], document.change());
          tell(document, taker);
        });
    return last[0];
  }

  private static void tell(DocumentVersion document, Changes taker) {
    if (document.damaged() || document.json().isEmpty()) {
      return;
    }
    String json = document.json().get();
    switch (document.id().kind()) {
      case PAPER -> kept(document).ifPresent(taker::paper);
      case CHOICE -> taker.choice(KeptJson.read(json, FieldChoice.class), document.version());
      case ROWS -> taker.rows(KeptJson.read(json, SameRow.class));
      default -> {}
    }
  }

  /** Number of the last change of the store, 0 when there is none. */
  public long lastChange() {
    return store.lastChange();
  }
}
