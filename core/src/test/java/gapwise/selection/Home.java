package gapwise.selection;

import gapwise.cohort.CohortDecision;
import gapwise.cohort.CohortLinks;
import gapwise.curation.EvidenceBase;
import gapwise.evidence.Study;
import gapwise.search.StudyIndex;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;

/** A whole evidence base in a folder, for tests. */
final class Home implements AutoCloseable {
  private final DocumentStore store;
  private final StudyIndex search;
  final EvidenceBase base;

  Home(Path folder) {
    store = DocumentStore.open(folder, Clock.systemUTC());
    base = new EvidenceBase(store);
    search = StudyIndex.open(folder.resolve("index"), store, EvidenceBase.STUDY, message -> {});
  }

  Home keep(Study... studies) {
    base.saveAll(List.of(studies).iterator(), "tester", "invented studies", List.of());
    return this;
  }

  /** Asks the state as it stands now. */
  Selector selector() {
    return new Selector(search.shown(), base.latest());
  }

  /** The same with what a person settled. */
  Selector selector(CohortDecision decision) {
    return new Selector(search.shown(), base.latest(), CohortLinks.of(List.of(decision)));
  }

  @Override
  public void close() {
    search.close();
    store.close();
  }
}
