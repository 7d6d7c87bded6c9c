package gapwise.curation;

import gapwise.reference.format.SearchDone;
import gapwise.reference.kept.KeptJson;
import gapwise.reference.kept.KeptLoad;
import gapwise.reference.kept.KeptReference;
import gapwise.reference.kept.KeptSearch;
import gapwise.reference.kept.LoadedFile;
import gapwise.reference.kept.ReferenceDecision;
import gapwise.reference.kept.SpooledRecord;
import gapwise.store.DocumentStore;
import gapwise.store.DocumentVersion;
import gapwise.store.Write;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Keeps references in one store, each with its whole history, with the loads they came by, the log
 * of searches and what persons settled of them. Damaged records are passed over. Safe for use by
 * many threads.
 */
public final class ReferenceBase {
  /** Kind of the documents that hold references; their key is the reference's id. */
  public static final String REFERENCE = "reference";

  /** Kind of the documents that remember which files were loaded; their key is the file's hash. */
  public static final String LOAD = "reference-load";

  /** Kind of the documents that are the log of searches. */
  public static final String SEARCH = "reference-search";

  /** Kind of the documents that hold what persons settled of two references. */
  public static final String DECISION = "reference-decision";

  private final DocumentStore store;

  public ReferenceBase(DocumentStore store) {
    this.store = Objects.requireNonNull(store, "store");
  }

  /**
   * Keeps all records of a load, the load itself and its searches, or nothing: when the iterator
   * throws, or the program is killed, nothing has changed. Records are held in memory one at a
   * time, and of each a few dozen letters until the load stands. A file that was kept before adds
   * nothing.
   *
   * @param records the records of all files
   * @param files the files
   * @param searches the log of searches; a search that names one of the files belongs to it
   * @return what became of each file
   */
  public List<KeptLoad> keep(
      Iterator<SpooledRecord> records,
      List<LoadedFile> files,
      List<SearchDone> searches,
      String who,
      String why) {
    LoadWrites writes = new LoadWrites(store, records, files, searches);
    store.writeAll(writes, who, why);
    return writes.loads();
  }

  /** Keeps what a person settled of two; what was settled of them before stays in the history. */
  public void settle(ReferenceDecision decision) {
    store.write(
        List.of(Write.put(DECISION, decision.key(), KeptJson.write(decision))),
        decision.who(),
        decision.reason());
  }

  /** A reference as it stands. */
  public Optional<KeptReference> find(String id) {
    return KeptReference.isId(id)
        ? store
            .latest(REFERENCE, id)
            .filter(document -> !document.damaged())
            .flatMap(DocumentVersion::json)
            .map(json -> KeptJson.read(json, KeptReference.class))
        : Optional.empty();
  }

  /** Passes on every reference with its abstract, by id, one at a time in memory. */
  public void forEach(Consumer<KeptReference> consumer) {
    each(REFERENCE, KeptReference.class, (kept, document) -> consumer.accept(kept));
  }

  /** The last decision about each pair. */
  public List<ReferenceDecision> decisions() {
    List<ReferenceDecision> decisions = new ArrayList<>();
    each(DECISION, ReferenceDecision.class, (decision, document) -> decisions.add(decision));
    return decisions;
  }

  /** A load with who accepted it, when. */
  public record StampedLoad(KeptLoad load, VersionStamp stamp) {}

  /** All loads, the last one first. */
  public List<StampedLoad> loads() {
    List<StampedLoad> loads = new ArrayList<>();
    each(
        LOAD,
        KeptLoad.class,
        (load, document) -> loads.add(new StampedLoad(load, VersionStamp.of(document))));
    loads.sort(Comparator.comparingLong((StampedLoad one) -> one.stamp().change()).reversed());
    return List.copyOf(loads);
  }

  /** The log of searches by date and database. */
  public List<KeptSearch> searches() {
    List<KeptSearch> searches = new ArrayList<>();
    each(SEARCH, KeptSearch.class, (search, document) -> searches.add(search));
    searches.sort(
        Comparator.comparing((KeptSearch one) -> one.search().date())
            .thenComparing(one -> one.search().database())
            .thenComparing(one -> one.search().words()));
    return List.copyOf(searches);
  }

  private interface Taker<T> {
    void take(T kept, DocumentVersion document);
  }

  private <T> void each(String kind, Class<T> type, Taker<T> taker) {
    store.forEachLatest(
        kind,
        document -> {
          if (!document.damaged()) {
            taker.take(KeptJson.read(document.json().orElseThrow(), type), document);
          }
        });
  }

  /** What has changed after a change, as kinds see it. */
  public interface Changes {
    /** A reference is new or says something else. */
    void reference(KeptReference kept);

    /** A person settled something. */
    void decision(ReferenceDecision decision);

    /** A study was written or removed. */
    void study(String id);
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
          if (document.id().kind().equals(EvidenceBase.STUDY)) {
            taker.study(document.id().key());
          } else if (!document.damaged() && document.json().isPresent()) {
            String json = document.json().get();
            switch (document.id().kind()) {
              case REFERENCE -> taker.reference(KeptJson.read(json, KeptReference.class));
              case DECISION -> taker.decision(KeptJson.read(json, ReferenceDecision.class));
              default -> {
                // Other documents say nothing of references.
              }
            }
          }
        });
    return last[0];
  }

  /** Has a listener told of each later write of this process, before its writer is. */
  public void onWrite(Runnable listener) {
    store.onWrite(written -> listener.run());
  }

  /** Number of the last change of the store, 0 when there is none. */
  public long lastChange() {
    return store.lastChange();
  }
}
