package gapwise.curation;

import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import gapwise.store.DocumentStore;
import gapwise.store.DocumentVersion;
import gapwise.store.Write;
import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.UUID;

/**
 * The writes of one import, made one at a time: every study whose content is new, then the record
 * of the import itself. Used once.
 */
final class ImportedStudies implements Iterator<Write> {
  private final Iterator<Study> studies;
  private final DocumentStore store;
  private final ImportNote note;
  private final String key = UUID.randomUUID().toString();
  private Optional<Write> next = Optional.empty();
  private boolean recorded;
  private int saved;
  private int unchanged;

  ImportedStudies(Iterator<Study> studies, DocumentStore store, ImportNote note) {
    this.studies = studies;
    this.store = store;
    this.note = note;
  }

  @Override
  public boolean hasNext() {
    while (next.isEmpty() && studies.hasNext()) {
      next = writeOf(studies.next());
    }
    if (next.isEmpty() && !recorded) {
      recorded = true;
      next = Optional.of(Write.put(EvidenceBase.IMPORT, key, record().toJson()).expecting(0));
    }
    return next.isPresent();
  }

  @Override
  public Write next() {
    if (!hasNext()) {
      throw new NoSuchElementException("all writes of the import were given");
    }
    Write write = next.orElseThrow();
    next = Optional.empty();
    return write;
  }

  private Optional<Write> writeOf(Study study) {
    String json = EvidenceJson.write(study);
    // A damaged version is never the same: importing a study again is how it is mended.
    Optional<String> before =
        store
            .latest(EvidenceBase.STUDY, study.id())
            .filter(version -> !version.damaged())
            .flatMap(DocumentVersion::json);
    // The same content may be written in other words, by an older version of the program.
    if (before.filter(b -> b.equals(json) || EvidenceJson.read(b).equals(study)).isPresent()) {
      unchanged++;
      return Optional.empty();
    }
    saved++;
    return Optional.of(Write.put(EvidenceBase.STUDY, study.id(), json));
  }

  /** Key of the record of the import among documents of its kind. */
  String key() {
    return key;
  }

  ImportRecord record() {
    return note.record(saved, unchanged);
  }
}
