package gapwise.answer;

import gapwise.curation.EvidenceBase;
import gapwise.evidence.Study;
import gapwise.search.StudyIndex;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;

/** An evidence base of invented studies, and what answers questions about it. */
record InventedBase(DocumentStore store, StudyIndex search, Answers answers)
    implements AutoCloseable {
  static InventedBase of(Path home, List<Study> studies) {
    DocumentStore store = DocumentStore.open(home, Clock.systemUTC());
    StudyIndex search =
        StudyIndex.open(home.resolve("index"), store, EvidenceBase.STUDY, message -> {});
    EvidenceBase base = new EvidenceBase(store);
    base.saveAll(studies.iterator(), "a reviewer", "invented", List.of());
    return new InventedBase(
        store, search, new Answers(new Selector(search.shown(), base.latest())::select));
  }

  @Override
  public void close() {
    search.close();
    store.close();
  }
}
