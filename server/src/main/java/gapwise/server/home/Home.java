package gapwise.server.home;

import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import gapwise.search.LuceneStudySearch;
import gapwise.search.StudySearch;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** One home folder, open: the records, their index and all that is asked of them. */
public final class Home implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Home.class);
  private static final String STUDIES = "study";

  private final DocumentStore store;
  private final LuceneStudySearch search;

  private Home(DocumentStore store, LuceneStudySearch search) {
    this.store = store;
    this.search = search;
  }

  /** Opens a home folder, making it when it is not there. */
  public static Home open(Path folder, Clock clock) {
    DocumentStore store = DocumentStore.open(folder, clock);
    try {
      return new Home(
          store, LuceneStudySearch.open(folder.resolve("index"), store, STUDIES, LOG::info));
    } catch (RuntimeException failure) {
      store.close();
      throw failure;
    }
  }

  /** The records. */
  public DocumentStore store() {
    return store;
  }

  /** The index. */
  public StudySearch search() {
    return search;
  }

  /** A study as it stands. */
  public Optional<Study> study(String id) {
    return store.latest(STUDIES, id).flatMap(v -> v.json()).map(EvidenceJson::read);
  }

  /** Builds the index anew from the records. */
  public void reindex() {
    search.rebuild();
  }

  @Override
  public void close() {
    search.close();
    store.close();
  }
}
