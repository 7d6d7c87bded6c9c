package gapwise.curation;

import gapwise.evidence.EvidenceJson;
import gapwise.store.DocumentStore;
import gapwise.store.DocumentVersion;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;

/**
 * The studies of one store as they stood after one change, whatever is written meanwhile: history
 * is only ever added to, so the state after a change can be read for ever. Safe for use by many
 * threads.
 */
public final class StudiesAt {
  /**
   * Measured: to look up one document takes as long as to pass over some nine when all are read in
   * a row.
   */
  private static final int PASSED_OVER_IN_ONE_LOOK_UP = 9;

  private final DocumentStore store;
  private final long change;
  private final RecentStudies recent;

  private StudiesAt(DocumentStore store, long change, RecentStudies recent) {
    this.store = store;
    this.change = change;
    this.recent = recent;
  }

  /**
   * The studies after a change.
   *
   * @param change number of the change, 0 for before the first
   */
  public static StudiesAt of(DocumentStore store, long change) {
    Objects.requireNonNull(store, "store");
    if (change < 0) {
      throw new IllegalArgumentException("change must be 0 or more, was " + change);
    }
    return new StudiesAt(store, change, new RecentStudies());
  }

  /**
   * The studies after a later change; those that did not change are not read again.
   *
   * @param later number of a change, not before this one's
   */
  public StudiesAt after(long later) {
    if (later < change) {
      throw new IllegalArgumentException("later must be " + change + " or more, was " + later);
    }
    Set<String> changed = new TreeSet<>();
    store.changesAfter(
        change,
        document -> {
          if (document.id().kind().equals(EvidenceBase.STUDY)) {
            changed.add(document.id().key());
          }
        });
    return new StudiesAt(store, later, recent.without(changed));
  }

  /**
   * The studies after an earlier change.
   *
   * @param earlier number of a change, 0 to this one's
   */
  public StudiesAt before(long earlier) {
    if (earlier > change) {
      throw new IllegalArgumentException("earlier must be " + change + " or less, was " + earlier);
    }
    return of(store, earlier);
  }

  /** Number of the change, 0 for before the first. */
  public long change() {
    return change;
  }

  /** When the change was made; empty when there is none yet. */
  public Optional<Instant> changedAt() {
    return store.changedAt(change);
  }

  /** The study as it stood; empty when there was none or it was removed. */
  public Optional<KeptStudy> study(String studyId) {
    return Optional.ofNullable(studies(Set.of(studyId)).get(studyId));
  }

  /** How a study stood: kept, withdrawn, damaged or never there. */
  public Standing standing(String studyId) {
    return store
        .lastVersionAt(change, EvidenceBase.STUDY, studyId)
        .map(StudiesAt::standing)
        .orElseGet(Standing.Unknown::new);
  }

  private static Standing standing(DocumentVersion document) {
    if (document.damaged()) {
      return new Standing.Damaged(VersionStamp.of(document));
    }
    return document.isDeletion()
        ? new Standing.Withdrawn(VersionStamp.of(document))
        : new Standing.Kept(kept(document));
  }

  /** Those of the studies named that there were, by id. */
  public Map<String, KeptStudy> studies(Set<String> studyIds) {
    Map<String, KeptStudy> found = new HashMap<>();
    Set<String> missing = new TreeSet<>();
    for (String id : studyIds) {
      recent.find(id).ifPresentOrElse(kept -> found.put(id, kept), () -> missing.add(id));
    }
    if (missing.isEmpty()) {
      return found;
    }
    Map<String, KeptStudy> read = read(missing);
    recent.keep(read);
    found.putAll(read);
    return found;
  }

  private Map<String, KeptStudy> read(Set<String> studyIds) {
    Map<String, KeptStudy> read = new HashMap<>();
    Consumer<DocumentVersion> take = document -> read.put(document.id().key(), kept(document));
    if ((long) studyIds.size() * PASSED_OVER_IN_ONE_LOOK_UP > change) {
      store.forEachAt(
          change,
          EvidenceBase.STUDY,
          document -> {
            if (studyIds.contains(document.id().key())) {
              take.accept(document);
            }
          });
    } else {
      studyIds.forEach(id -> store.at(change, EvidenceBase.STUDY, id).ifPresent(take));
    }
    return read;
  }

  /** One version of a study, removals included. */
  public Optional<StudyVersion> version(String studyId, int version) {
    return store
        .version(EvidenceBase.STUDY, studyId, version)
        .filter(document -> document.change() <= change)
        .map(StudiesAt::versionOf);
  }

  /** All versions of a study, the first one first, removals included. */
  public List<StudyVersion> history(String studyId) {
    return store.history(EvidenceBase.STUDY, studyId).stream()
        .filter(document -> document.change() <= change)
        .map(StudiesAt::versionOf)
        .toList();
  }

  /** Passes on every study as it stood, by id, one at a time in memory. */
  public void forEach(Consumer<KeptStudy> consumer) {
    store.forEachAt(change, EvidenceBase.STUDY, document -> consumer.accept(kept(document)));
  }

  /**
   * The same without studies whose record is damaged, for work that must go on beside them, such as
   * the import that mends them.
   */
  public void forEachSound(Consumer<KeptStudy> consumer) {
    store.forEachAt(
        change,
        EvidenceBase.STUDY,
        document -> {
          if (!document.damaged()) {
            consumer.accept(kept(document));
          }
        });
  }

  /** The keys of all doubts that were acknowledged with imports whose record is sound. */
  public Set<String> acknowledgedKeys() {
    Set<String> keys = new HashSet<>();
    store.forEachAt(
        change,
        EvidenceBase.IMPORT,
        document -> {
          if (!document.damaged()) {
            keys.addAll(ImportRecord.ofJson(document.json().orElseThrow()).acknowledgedKeys());
          }
        });
    return keys;
  }

  /** What persons settled of shared patients, as JSON, by its key; damaged ones are passed over. */
  public List<String> settledCohorts() {
    List<String> settled = new ArrayList<>();
    store.forEachAt(
        change,
        EvidenceBase.COHORT,
        document -> {
          if (!document.damaged()) {
            settled.add(document.json().orElseThrow());
          }
        });
    return List.copyOf(settled);
  }

  /** A judgement as it stood, by its key. */
  public Optional<KeptJudgement> judgement(String key) {
    return store
        .at(change, EvidenceBase.JUDGEMENT, key)
        .map(
            document ->
                new KeptJudgement(document.json().orElseThrow(), VersionStamp.of(document)));
  }

  /** Something a person judged of the evidence, as JSON, with its stamp. */
  public record KeptJudgement(String json, VersionStamp stamp) {}

  /** What is remembered of an import, with its stamp. */
  public record KeptImport(ImportRecord record, VersionStamp stamp) {}

  /** All imports, the first one first. */
  public List<KeptImport> imports() {
    List<KeptImport> imports = new ArrayList<>();
    store.forEachAt(
        change,
        EvidenceBase.IMPORT,
        document ->
            imports.add(
                new KeptImport(
                    ImportRecord.ofJson(document.json().orElseThrow()),
                    VersionStamp.of(document))));
    imports.sort(Comparator.comparingLong(kept -> kept.stamp().change()));
    return List.copyOf(imports);
  }

  private static KeptStudy kept(DocumentVersion document) {
    return new KeptStudy(
        EvidenceJson.read(document.json().orElseThrow()), VersionStamp.of(document));
  }

  private static StudyVersion versionOf(DocumentVersion document) {
    return new StudyVersion(VersionStamp.of(document), document.json().map(EvidenceJson::read));
  }
}
