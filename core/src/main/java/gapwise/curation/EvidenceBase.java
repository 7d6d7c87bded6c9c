package gapwise.curation;

import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import gapwise.problem.Problem;
import gapwise.store.DocumentStore;
import gapwise.store.DocumentVersion;
import gapwise.store.Write;
import gapwise.store.WriteAnswer;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;

/**
 * The studies of one store, each with its whole history. Records are checked before they come here.
 * Safe for use by many threads.
 */
public final class EvidenceBase {
  /** Kind of the documents that hold studies; their key is the study's id. */
  public static final String STUDY = "study";

  /** Kind of the documents that remember imports. */
  public static final String IMPORT = "import";

  /**
   * Measured: to look up one document takes as long as to pass over some nine when all are read in
   * a row.
   */
  private static final int PASSED_OVER_IN_ONE_LOOK_UP = 9;

  private final DocumentStore store;
  private final RecentStudies recent = new RecentStudies();

  /** Listens to the store from now on, so one is made for a store and kept as long as it. */
  public EvidenceBase(DocumentStore store) {
    this.store = Objects.requireNonNull(store, "store");
    store.onWrite(written -> forget(written.firstChange()));
  }

  private void forget(long firstChange) {
    List<String> changed = new ArrayList<>();
    store.changesAfter(
        firstChange - 1,
        document -> {
          if (document.id().kind().equals(STUDY)) {
            changed.add(document.id().key());
          }
        });
    recent.forget(changed);
  }

  /**
   * Saves one study.
   *
   * @param expectedVersion the version that was read before it was changed, 0 for a new study
   */
  public SaveAnswer save(Study study, String who, String why, int expectedVersion) {
    Write write =
        Write.put(STUDY, study.id(), EvidenceJson.write(study)).expecting(expectedVersion);
    return answer(store.write(List.of(write), who, why), expectedVersion + 1);
  }

  /**
   * Removes a study from searches and results; its history stays.
   *
   * @param expectedVersion the version that was read before, 1 or more
   */
  public SaveAnswer remove(String studyId, String who, String why, int expectedVersion) {
    Write write = Write.delete(STUDY, studyId).expecting(expectedVersion);
    return answer(store.write(List.of(write), who, why), expectedVersion + 1);
  }

  private static SaveAnswer answer(WriteAnswer answer, int version) {
    return answer.written().isPresent()
        ? new SaveAnswer.Saved(version, answer.written().get().lastChange())
        : new SaveAnswer.NotSaved(answer.conflicts());
  }

  /**
   * Saves all studies of an import and a record of it, or nothing: when the iterator throws, its
   * exception comes out and nothing has changed. A study that stands there already becomes its next
   * version, or nothing where its content is the same, so an import may be repeated. Studies are
   * held in memory one at a time.
   *
   * @param acknowledged doubts that a person has seen and accepted
   */
  public ImportRecord saveAll(
      Iterator<Study> studies, String who, String why, List<Problem> acknowledged) {
    ImportedStudies writes = new ImportedStudies(studies, store, acknowledged);
    WriteAnswer answer = store.writeAll(writes, who, why);
    if (answer.written().isEmpty()) {
      throw new IllegalStateException("an import expects no version, yet " + answer.conflicts());
    }
    return writes.record();
  }

  /** The study as it stands; empty when there is none or it was removed. */
  public Optional<KeptStudy> study(String studyId) {
    return Optional.ofNullable(studies(Set.of(studyId)).get(studyId));
  }

  /** Those of the studies named that there are, by id. */
  public Map<String, KeptStudy> studies(Set<String> studyIds) {
    Map<String, KeptStudy> found = new HashMap<>();
    Set<String> missing = new TreeSet<>();
    long writes = recent.writesSoFar();
    for (String id : studyIds) {
      recent.find(id).ifPresentOrElse(kept -> found.put(id, kept), () -> missing.add(id));
    }
    if (missing.isEmpty()) {
      return found;
    }
    Map<String, KeptStudy> read = read(missing);
    recent.keep(read, writes);
    found.putAll(read);
    return found;
  }

  private Map<String, KeptStudy> read(Set<String> studyIds) {
    Map<String, KeptStudy> read = new HashMap<>();
    Consumer<DocumentVersion> take = document -> read.put(document.id().key(), kept(document));
    if ((long) studyIds.size() * PASSED_OVER_IN_ONE_LOOK_UP > store.lastChange()) {
      store.forEachLatest(
          STUDY,
          document -> {
            if (studyIds.contains(document.id().key())) {
              take.accept(document);
            }
          });
    } else {
      studyIds.forEach(id -> store.latest(STUDY, id).ifPresent(take));
    }
    return read;
  }

  /** One version of a study, removals included. */
  public Optional<StudyVersion> version(String studyId, int version) {
    return store.version(STUDY, studyId, version).map(EvidenceBase::versionOf);
  }

  /** All versions of a study, the first one first, removals included. */
  public List<StudyVersion> history(String studyId) {
    return store.history(STUDY, studyId).stream().map(EvidenceBase::versionOf).toList();
  }

  /** Passes on every study as it stands, by id, one at a time in memory. */
  public void forEach(Consumer<KeptStudy> consumer) {
    store.forEachLatest(STUDY, document -> consumer.accept(kept(document)));
  }

  /** What is remembered of an import, with its stamp. */
  public record KeptImport(ImportRecord record, VersionStamp stamp) {}

  /** All imports, the first one first. */
  public List<KeptImport> imports() {
    List<KeptImport> imports = new ArrayList<>();
    store.forEachLatest(
        IMPORT,
        document ->
            imports.add(
                new KeptImport(
                    ImportRecord.ofJson(document.json().orElseThrow()),
                    VersionStamp.of(document))));
    imports.sort(Comparator.comparingLong(kept -> kept.stamp().change()));
    return List.copyOf(imports);
  }

  /** Number of the last change of the store, 0 when there is none. */
  public long lastChange() {
    return store.lastChange();
  }

  /** When the last change of the store was made; empty when there is none. */
  public Optional<Instant> lastChangeAt() {
    return store.lastChangeAt();
  }

  private static KeptStudy kept(DocumentVersion document) {
    return new KeptStudy(
        EvidenceJson.read(document.json().orElseThrow()), VersionStamp.of(document));
  }

  private static StudyVersion versionOf(DocumentVersion document) {
    return new StudyVersion(VersionStamp.of(document), document.json().map(EvidenceJson::read));
  }
}
