package gapwise.server.home;

import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.curation.EvidenceBase;
import gapwise.curation.KeptStudy;
import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import gapwise.search.LuceneStudySearch;
import gapwise.search.StudySearch;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.atomic.AtomicBoolean;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** One home folder, open: the records, their index and all that is asked of them. */
public final class Home implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Home.class);

  private final DocumentStore store;
  private final LuceneStudySearch search;
  private final EvidenceBase base;
  private final Answers answers;

  private final Path folder;
  private volatile Invented invented = new Invented(0, false);

  /** Whether any study was invented, as of a change of the evidence base. */
  private record Invented(long change, boolean any) {}

  private Home(Path folder, DocumentStore store, LuceneStudySearch search) {
    this.folder = folder;
    this.store = store;
    this.search = search;
    this.base = new EvidenceBase(store);
    this.answers = new Answers(new LatestSelections(new Selector(search, base), search));
  }

  /** Opens a home folder, making it when it is not there. */
  public static Home open(Path folder, Clock clock) {
    DocumentStore store = DocumentStore.open(folder, clock);
    try {
      return new Home(
          folder,
          store,
          LuceneStudySearch.open(
              folder.resolve("index"), store, EvidenceBase.STUDY, message -> tell(store, message)));
    } catch (RuntimeException failure) {
      store.close();
      throw failure;
    }
  }

  /** A new home has no index yet, which is nothing to tell. */
  private static void tell(DocumentStore store, String message) {
    if (store.lastChange() > 0) {
      LOG.info(message);
    }
  }

  /** The folder itself. */
  public Path folder() {
    return folder;
  }

  /**
   * Whether any study here is invented, which every page must say. Only what changed since the last
   * asking is read, unless an invented study may have gone.
   */
  public boolean hasInvented() {
    long change = store.lastChange();
    Invented known = invented;
    if (known.change() != change) {
      known = new Invented(change, known.any() ? anyInvented() : anyInventedAfter(known.change()));
      invented = known;
    }
    return known.any();
  }

  private boolean anyInventedAfter(long change) {
    AtomicBoolean any = new AtomicBoolean();
    store.changesAfter(
        change,
        version -> {
          if (!any.get() && version.id().kind().equals(EvidenceBase.STUDY)) {
            version.json().map(EvidenceJson::read).map(Study::invented).ifPresent(any::set);
          }
        });
    return any.get() && anyInvented();
  }

  private boolean anyInvented() {
    AtomicBoolean any = new AtomicBoolean();
    store.forEachLatest(
        EvidenceBase.STUDY,
        version -> {
          if (!any.get()) {
            version.json().map(EvidenceJson::read).map(Study::invented).ifPresent(any::set);
          }
        });
    return any.get();
  }

  /** Writes a copy of all records into one new file. */
  public void backup(Path file) throws IOException {
    store.backup(file);
  }

  /** The studies. */
  public EvidenceBase base() {
    return base;
  }

  /** Answers to questions, and the runner of plans. */
  public Answers answers() {
    return answers;
  }

  /** The index. */
  public StudySearch search() {
    return search;
  }

  /** A study as it stands. */
  public Optional<Study> study(String id) {
    return base.study(id).map(KeptStudy::study);
  }

  /**
   * The state that figures of this home are made from.
   *
   * @param program version of the program
   */
  public Edition edition(String program) {
    return new Edition(
        program,
        OptionalLong.of(base.lastChange()),
        base.lastChangeAt().map(when -> LocalDate.ofInstant(when, ZoneOffset.UTC)));
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
