package gapwise.server.home;

import gapwise.carried.CarriedLines;
import gapwise.curation.EvidenceBase;
import gapwise.curation.KeptQuestionBase;
import gapwise.curation.ReferenceBase;
import gapwise.curation.ScreeningBase;
import gapwise.curation.StudiesAt;
import gapwise.figure.flow.FlowChart;
import gapwise.search.IndexTrace;
import gapwise.search.MemoryIndex;
import gapwise.server.account.People;
import gapwise.store.DocumentStore;
import gapwise.store.Expected;
import gapwise.store.Soundness;
import gapwise.store.StorePlace;
import gapwise.whole.WholePackage;
import gapwise.whole.WholeWriter;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The records of one home folder, open, without their index: all that commands need which ask no
 * search. Any number of processes may have the records of one home open, a server among them, which
 * follows what others write.
 */
public final class Records implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Records.class);

  private final DocumentStore store;
  private final HomeSoundness soundness;
  private final EvidenceBase base;
  private final ReferenceBase referenceBase;
  private final People people;

  private Records(DocumentStore store, HomeSoundness soundness, Clock clock) {
    this.store = store;
    this.soundness = soundness;
    this.base = new EvidenceBase(store);
    this.referenceBase = new ReferenceBase(store);
    this.people = People.of(store.workingCopies(), store.trail(), clock);
  }

  /** Opens the records of a home folder, making it when it is not there. */
  public static Records open(Path folder, Clock clock) {
    return open(folder, clock, Expected.ANYTHING);
  }

  /** Opens the records of a home folder that was made before; makes none. */
  public static Records openExisting(Path folder, Clock clock) {
    return open(folder, clock, Expected.A_HOME);
  }

  /** The same of an evidence base whose records may be on a server. */
  public static Records open(StorePlace place, Clock clock) {
    return open(place, clock, Expected.ANYTHING);
  }

  /** The same of one that was made before; makes none. */
  public static Records openExisting(StorePlace place, Clock clock) {
    return open(place, clock, Expected.A_HOME);
  }

  static Records open(Path folder, Clock clock, Expected expected) {
    return open(StorePlace.of(folder), clock, expected);
  }

  static Records open(StorePlace place, Clock clock, Expected expected) {
    Path folder = place.home();
    long seen = IndexTrace.lastChange(indexOf(folder));
    DocumentStore store = DocumentStore.open(place, clock, expected.withChange(seen));
    try {
      store.notices().forEach(LOG::warn);
      if (store.wasPutBack()) {
        // It may have been made from records that were damaged, which no number of a change tells.
        IndexTrace.discard(indexOf(folder));
      }
      return new Records(store, HomeSoundness.of(store), clock);
    } catch (RuntimeException failure) {
      store.close();
      throw failure;
    }
  }

  static Path indexOf(Path folder) {
    return folder.resolve("index");
  }

  DocumentStore store() {
    return store;
  }

  /** Where studies are written. */
  public EvidenceBase base() {
    return base;
  }

  /** Where references are written, and read whole. */
  public ReferenceBase referenceBase() {
    return referenceBase;
  }

  /** Who works with them, and what they did. */
  public People people() {
    return people;
  }

  /** What stands beside the studies as one file, and from such a file. */
  public CarriedLines carriedLines() {
    return new CarriedLines(store);
  }

  /** Writes all of it, with its whole history, as a package by {@link WholeWriter}. */
  public WholeWriter.Written writeWhole(Path target, String program) throws IOException {
    return new WholeWriter(store, program).write(target);
  }

  /** Whether nothing was ever written here. */
  public boolean isEmpty() {
    return store.lastChange() == 0;
  }

  /**
   * Takes the whole history of another base.
   *
   * @return whether it was taken: not where anything was written here before
   */
  public boolean restore(WholePackage whole) throws IOException {
    return whole.restoreInto(store).isPresent();
  }

  /** The flow of records through the screening as it stands; empty where no reference is kept. */
  public Optional<FlowChart> screeningFlow() {
    try (References references = new References(referenceBase, base)) {
      Screening screening = new Screening(new ScreeningBase(store), references);
      return new ScreeningFlow(screening, referenceBase).drawn();
    }
  }

  /** The studies as they stand now. */
  public StudiesAt studies() {
    return base.latest();
  }

  /** Where questions are kept with their answers. */
  public KeptQuestionBase keptQuestions() {
    return new KeptQuestionBase(store);
  }

  /**
   * The state of the evidence base now, with an index of its own in memory: about 15 seconds for
   * 100,000 groups.
   */
  public Evidence evidence() {
    StudiesAt now = studies();
    return new Evidence(
        MemoryIndex.of(each -> now.forEachSound(kept -> each.accept(kept.study())), now.change()),
        now);
  }

  /** Studies that may tell of the same patients, and what was settled of them. */
  public RememberedOverlaps overlaps() {
    return new RememberedOverlaps(studies());
  }

  Optional<Soundness> soundness() {
    return soundness.found();
  }

  @Override
  public void close() {
    soundness.close();
    store.close();
  }
}
