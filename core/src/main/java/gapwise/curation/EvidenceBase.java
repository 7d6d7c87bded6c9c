package gapwise.curation;

import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import gapwise.problem.Problem;
import gapwise.store.Basis;
import gapwise.store.DocumentStore;
import gapwise.store.Write;
import gapwise.store.WriteAnswer;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/**
 * Keeps studies in one store, each with its whole history. Records are checked before they come
 * here. What is read of them is of one state: {@link StudiesAt}. Safe for use by many threads.
 */
public final class EvidenceBase {
  /** Kind of the documents that hold studies; their key is the study's id. */
  public static final String STUDY = "study";

  /** Kind of the documents that remember imports. */
  public static final String IMPORT = "import";

  /** Kind of the documents that hold what persons judged of the evidence. */
  public static final String JUDGEMENT = "judgement";

  /** Kind of the documents that hold what persons settled of shared patients. */
  public static final String COHORT = "cohort";

  private final DocumentStore store;

  public EvidenceBase(DocumentStore store) {
    this.store = Objects.requireNonNull(store, "store");
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
   * Saves one study with the doubts about it that a person lets stand.
   *
   * @param expectedVersion the version that was read before it was changed, 0 for a new study
   * @param note who, why, and the doubts
   * @param comparedWith the state of the base that the study was compared with
   * @return not saved where any study has changed since that state
   */
  public SaveAnswer save(
      Study study, int expectedVersion, ImportNote note, StudiesAt comparedWith) {
    return save(study, expectedVersion, note, comparedWith, List.of());
  }

  /**
   * The same with what else is written in the same step, or not at all.
   *
   * @param beside such as the record of how the study was agreed
   */
  public SaveAnswer save(
      Study study,
      int expectedVersion,
      ImportNote note,
      StudiesAt comparedWith,
      List<Write> beside) {
    List<Write> writes = new ArrayList<>(beside);
    writes.add(Write.put(STUDY, study.id(), EvidenceJson.write(study)).expecting(expectedVersion));
    if (!note.reasons().isEmpty()) {
      String json = note.record(1, 0).toJson();
      writes.add(Write.put(IMPORT, UUID.randomUUID().toString(), json).expecting(0));
    }
    WriteAnswer answer =
        store.writeAll(writes.iterator(), note.who(), note.why(), basis(comparedWith));
    return answer(answer, expectedVersion + 1);
  }

  /**
   * Writes what stands beside a study that stays as it is.
   *
   * @param expectedVersion the version of the study
   * @return not saved where any study has changed since it was compared
   */
  public SaveAnswer saveBeside(
      int expectedVersion, List<Write> beside, ImportNote note, StudiesAt comparedWith) {
    WriteAnswer answer =
        store.writeAll(beside.iterator(), note.who(), note.why(), basis(comparedWith));
    return answer(answer, expectedVersion);
  }

  private static Optional<Basis> basis(StudiesAt comparedWith) {
    return Optional.of(new Basis(STUDY, comparedWith.change()));
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

  /**
   * Keeps what a person judged of the evidence.
   *
   * @param key which judgement
   * @param json its content
   * @param expectedVersion the version that the person saw, 0 for none
   */
  public SaveAnswer judge(String key, String json, String who, String why, int expectedVersion) {
    Write write = Write.put(JUDGEMENT, key, json).expecting(expectedVersion);
    return answer(store.write(List.of(write), who, why), expectedVersion + 1);
  }

  /**
   * Keeps what a person settled of two records; what was settled of them before stays in the
   * history.
   *
   * @param key which two
   * @param json its content
   */
  public void settle(String key, String json, String who, String why) {
    store.write(List.of(Write.put(COHORT, key, json)), who, why);
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
   * @param note who, why, and the doubts that a person has seen and accepted
   * @param comparedWith the state of the base that the studies were compared with
   * @return empty where any study has changed since that state, in whatever process: nothing is
   *     stored then, and the comparison must be made anew
   * @throws ImportInDoubtException when the store failed so that it cannot be told whether the
   *     import stands
   * @throws RuntimeException any other: nothing was stored
   */
  public Optional<ImportRecord> saveAll(
      Iterator<Study> studies, ImportNote note, StudiesAt comparedWith) {
    return saveAll(studies, note, basis(comparedWith));
  }

  /** The same whatever stands there, with no doubt acknowledged. */
  public ImportRecord saveAll(
      Iterator<Study> studies, String who, String why, List<Problem> acknowledged) {
    ImportNote note = new ImportNote(who, why, acknowledged, List.of(), Map.of());
    return saveAll(studies, note, Optional.empty())
        .orElseThrow(() -> new IllegalStateException("an import without a basis has no conflict"));
  }

  private Optional<ImportRecord> saveAll(
      Iterator<Study> studies, ImportNote note, Optional<Basis> basis) {
    ImportedStudies writes = new ImportedStudies(studies, store, note);
    try {
      WriteAnswer answer = store.writeAll(writes, note.who(), note.why(), basis);
      if (answer.written().isEmpty()) {
        return Optional.empty();
      }
    } catch (RuntimeException failure) {
      if (!stands(writes, failure)) {
        throw failure;
      }
    }
    return Optional.of(writes.record());
  }

  /** The store decides: the record of an import is its last write, so it is there or nothing is. */
  private boolean stands(ImportedStudies writes, RuntimeException failure) {
    try {
      return store.latest(IMPORT, writes.key()).isPresent();
    } catch (RuntimeException unread) {
      failure.addSuppressed(unread);
      throw new ImportInDoubtException(failure);
    }
  }

  /** The studies as they stand now. */
  public StudiesAt latest() {
    return StudiesAt.of(store, store.lastChange());
  }

  /** Number of the last change of the store, 0 when there is none. */
  public long lastChange() {
    return store.lastChange();
  }
}
