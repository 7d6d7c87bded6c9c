package gapwise.server.home;

import static gapwise.sentence.Sentences.say;

import gapwise.carried.CarriedLines;
import gapwise.curation.EvidenceBase;
import gapwise.curation.ExtractionBase;
import gapwise.curation.KeptQuestionBase;
import gapwise.curation.ReferenceBase;
import gapwise.curation.ReviewBase;
import gapwise.curation.ScreeningBase;
import gapwise.curation.StudiesAt;
import gapwise.desk.Drafts;
import gapwise.desk.Mappings;
import gapwise.intake.Intake;
import gapwise.search.IndexedKinds;
import gapwise.search.SearchSnapshot;
import gapwise.search.StudyIndex;
import gapwise.server.account.People;
import gapwise.store.DocumentStore;
import gapwise.store.Expected;
import gapwise.store.Soundness;
import gapwise.store.StorePlace;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One home folder, open: the records, their index, and the state of the evidence base that is
 * shown. What is written goes through {@link #base}; what is read is read of one state, which
 * {@link #hold} gives. What another process writes to the records is shown within a second or two.
 */
public final class Home implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Home.class);

  private final Records records;

  /**
   * References, what people choose of them, what two people extract apart, the review and the
   * questions that are kept are told as they stand now; they change nothing of what is worked out
   * of studies.
   */
  private static final IndexedKinds FOLLOWED =
      new IndexedKinds(
          EvidenceBase.STUDY,
          Set.of(
              ReferenceBase.REFERENCE,
              ReferenceBase.LOAD,
              ReferenceBase.SEARCH,
              ReferenceBase.DECISION,
              ScreeningBase.VOTE,
              ScreeningBase.RULING,
              ScreeningBase.PROTOCOL,
              ReviewBase.REVIEW,
              KeptQuestionBase.QUESTION,
              ExtractionBase.PAPER,
              ExtractionBase.EXTRACTION,
              ExtractionBase.CHOICE,
              ExtractionBase.ROWS));

  private final Path folder;
  private final DocumentStore store;
  private final EvidenceBase base;
  private final ReferenceBase referenceBase;
  private final References references;
  private final Screening screening;
  private final ReviewBase review;
  private final KeptQuestionBase keptQuestions;
  private final Extractions extractions;
  private final Drafts drafts;
  private final Mappings mappings;
  private final Papers papers;
  private final Pictures pictures;
  private final Intake intake;
  private final StudyIndex index;
  private final ChangeWatch watch;
  private volatile Optional<Evidence> shown = Optional.empty();

  private Home(Path folder, Records records) {
    this.folder = folder;
    this.records = records;
    this.store = records.store();
    this.base = records.base();
    this.referenceBase = records.referenceBase();
    this.references = new References(referenceBase, base);
    this.screening = new Screening(new ScreeningBase(store), references);
    this.review = new ReviewBase(store);
    this.keptQuestions = new KeptQuestionBase(store);
    this.extractions = new Extractions(new ExtractionBase(store));
    this.drafts = new Drafts(store.workingCopies());
    this.mappings = new Mappings(store.workingCopies());
    this.intake = new Intake(base);
    this.papers = new Papers(folder.resolve("papers"));
    this.pictures = new Pictures(folder.resolve("pictures"));
    this.index = StudyIndex.open(Records.indexOf(folder), store, FOLLOWED, LOG::info, this::show);
    this.watch = ChangeWatch.start(store::lastChange, this::change, index::catchUp);
  }

  /** Opens a home folder, making it when it is not there. */
  public static Home open(Path folder, Clock clock) {
    return open(StorePlace.of(folder), clock);
  }

  /** Opens a home folder that was made before; makes none. */
  public static Home openExisting(Path folder, Clock clock) {
    return openExisting(StorePlace.of(folder), clock);
  }

  /** The same of an evidence base whose records may be on a server. */
  public static Home open(StorePlace place, Clock clock) {
    return open(place, clock, Expected.ANYTHING);
  }

  /** The same of one that was made before; makes none. */
  public static Home openExisting(StorePlace place, Clock clock) {
    return open(place, clock, Expected.A_HOME);
  }

  private static Home open(StorePlace place, Clock clock, Expected expected) {
    Records records = Records.open(place, clock, expected);
    try {
      return new Home(place.home(), records);
    } catch (RuntimeException failure) {
      records.close();
      throw failure;
    }
  }

  /** The one step in which one state replaces another. */
  private void show(SearchSnapshot snapshot) {
    StudiesAt studies =
        shown
            .filter(before -> before.change() <= snapshot.change())
            .map(before -> before.studies().after(snapshot.change()))
            .orElseGet(() -> StudiesAt.of(store, snapshot.change()));
    shown = Optional.of(new Evidence(snapshot, studies));
  }

  /** Number of the last change that is shown; 0 where nothing is. */
  private long change() {
    return shown.map(Evidence::change).orElse(0L);
  }

  /** A hold on the state that is shown now. */
  public Hold hold() {
    while (true) {
      Evidence now = shown.orElseThrow(() -> new IllegalStateException("the home is not open"));
      if (now.snapshot().retain()) {
        return new Hold(now);
      }
      // Let go of between the two lines above, so that a later state is shown by now.
    }
  }

  /** The folder itself. */
  public Path folder() {
    return folder;
  }

  /** Where studies are written. */
  public EvidenceBase base() {
    return base;
  }

  /** Where references are written, and read whole. */
  public ReferenceBase referenceBase() {
    return referenceBase;
  }

  /** The kept references as they stand now, and what is proposed of them. */
  public References references() {
    return references;
  }

  /** Which of the kept references people take. */
  public Screening screening() {
    return screening;
  }

  /** The flow of records through it. */
  public ScreeningFlow screeningFlow() {
    return new ScreeningFlow(screening, referenceBase);
  }

  /** Where the review is kept. */
  public ReviewBase review() {
    return review;
  }

  /** Where questions are kept with their answers. */
  public KeptQuestionBase keptQuestions() {
    return keptQuestions;
  }

  /** What two people extract of one paper without seeing each other's. */
  public Extractions extractions() {
    return extractions;
  }

  /** What stands beside the studies as one file, and from such a file. */
  public CarriedLines carriedLines() {
    return records.carriedLines();
  }

  /** Who works with it, and what they did. */
  public People people() {
    return records.people();
  }

  /** What people are at work on. */
  public Drafts drafts() {
    return drafts;
  }

  /** What people accepted of the columns of untidy sheets. */
  public Mappings mappings() {
    return mappings;
  }

  /** The papers that people read. */
  public Papers papers() {
    return papers;
  }

  /** The pictures of figures that people handed in by themselves. */
  public Pictures pictures() {
    return pictures;
  }

  /** The way by which evidence comes in. */
  public Intake intake() {
    return intake;
  }

  /** What every page says first: that what is shown is not the newest, that records are damaged. */
  public List<Notice> notices() {
    return Stream.concat(
            notice().map(words -> new Notice(say("page.heading-not-newest"), words)).stream(),
            records.soundness().flatMap(Notice::ofDamage).stream())
        .toList();
  }

  /**
   * What people must know of the state that is shown: that it is older than the records, and which
   * one it is; empty where it is the newest.
   */
  public Optional<String> notice() {
    return index
        .behind()
        .flatMap(why -> shown)
        .map(evidence -> say("page.not-newest", Map.of("at", evidence.inWords())));
  }

  /**
   * What the look at all pages and records of the database found; empty while it is under way,
   * which with a large one goes on after the opening.
   */
  public Optional<Soundness> soundness() {
    return records.soundness();
  }

  /** Builds the index anew from the records. */
  public void reindex() {
    index.rebuild();
  }

  @Override
  public void close() {
    watch.close();
    shown = Optional.empty();
    references.close();
    papers.close();
    index.close();
    records.close();
  }
}
