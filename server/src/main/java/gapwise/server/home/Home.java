package gapwise.server.home;

import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.curation.EvidenceBase;
import gapwise.curation.KeptStudy;
import gapwise.evidence.Study;
import gapwise.search.IndexTrace;
import gapwise.search.LuceneStudySearch;
import gapwise.search.StudySearch;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import gapwise.store.Expected;
import gapwise.store.Soundness;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** One home folder, open: the records, their index and all that is asked of them. */
public final class Home implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Home.class);

  private final DocumentStore store;
  private final LuceneStudySearch index;
  private final StudySearch search;
  private final EvidenceBase base;
  private final Selector selector;
  private final Answers answers;
  private final LatestClaims claims;
  private final HomeSoundness soundness;

  private final Path folder;

  private Home(Path folder, DocumentStore store, LuceneStudySearch index, HomeSoundness soundness) {
    this.folder = folder;
    this.store = store;
    this.index = index;
    this.soundness = soundness;
    this.search = new LatestSearches(index);
    this.base = new EvidenceBase(store);
    this.selector = new Selector(search, base);
    this.answers = new Answers(new LatestSelections(selector, search));
    this.claims = new LatestClaims(answers, search);
  }

  /** Opens a home folder, making it when it is not there. */
  public static Home open(Path folder, Clock clock) {
    return open(folder, clock, Expected.ANYTHING);
  }

  /** Opens a home folder that was made before; makes none. */
  public static Home openExisting(Path folder, Clock clock) {
    return open(folder, clock, Expected.A_HOME);
  }

  private static Home open(Path folder, Clock clock, Expected expected) {
    Path indexFolder = folder.resolve("index");
    DocumentStore store =
        DocumentStore.open(folder, clock, expected.withChange(IndexTrace.lastChange(indexFolder)));
    try {
      store.notices().forEach(LOG::warn);
      HomeSoundness soundness = HomeSoundness.of(store);
      try {
        return new Home(folder, store, index(indexFolder, store), soundness);
      } catch (RuntimeException failure) {
        soundness.close();
        throw failure;
      }
    } catch (RuntimeException failure) {
      store.close();
      throw failure;
    }
  }

  private static LuceneStudySearch index(Path folder, DocumentStore store) {
    LuceneStudySearch index =
        LuceneStudySearch.open(folder, store, EvidenceBase.STUDY, message -> tell(store, message));
    if (store.wasPutBack()) {
      // It may have been made from records that were damaged, which no number of a change tells.
      index.rebuild();
    }
    return index;
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

  /** Whether any study here is invented, which every page must say. */
  public boolean hasInvented() {
    return index.holdsInvented();
  }

  /** Those of the studies named that there are, as they stand, by id. */
  public Map<String, Study> studies(Set<String> ids) {
    Map<String, Study> found = new HashMap<>();
    base.studies(ids).forEach((id, kept) -> found.put(id, kept.study()));
    return found;
  }

  /**
   * What the look at all pages and records of the database found; empty while it is under way,
   * which with a large one goes on after the opening.
   */
  public Optional<Soundness> soundness() {
    return soundness.found();
  }

  /** The studies. */
  public EvidenceBase base() {
    return base;
  }

  /** Answers to questions, and the runner of plans. */
  public Answers answers() {
    return answers;
  }

  /** Claims, examined. */
  public LatestClaims claims() {
    return claims;
  }

  /** Rows that answer a question, read anew. */
  public Selector selector() {
    return selector;
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
    index.rebuild();
  }

  @Override
  public void close() {
    soundness.close();
    index.close();
    store.close();
  }
}
