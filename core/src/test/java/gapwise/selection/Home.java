package gapwise.selection;

import gapwise.curation.EvidenceBase;
import gapwise.evidence.Study;
import gapwise.search.LuceneStudySearch;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;

/** A whole evidence base in a folder, for tests. */
final class Home implements AutoCloseable {
  private final DocumentStore store;
  private final LuceneStudySearch search;
  final EvidenceBase base;
  final Selector selector;

  Home(Path folder) {
    store = DocumentStore.open(folder, Clock.systemUTC());
    base = new EvidenceBase(store);
    search =
        LuceneStudySearch.open(folder.resolve("index"), store, EvidenceBase.STUDY, message -> {});
    selector = new Selector(search, base);
  }

  Home keep(Study... studies) {
    base.saveAll(List.of(studies).iterator(), "tester", "invented studies", List.of());
    return this;
  }

  @Override
  public void close() {
    search.close();
    store.close();
  }
}
