package gapwise.server.home;

import gapwise.carried.CarriedLines;
import gapwise.curation.EvidenceBase;
import gapwise.curation.KeptQuestionBase;
import gapwise.curation.ReferenceBase;
import gapwise.curation.StudiesAt;
import gapwise.search.IndexTrace;
import gapwise.search.MemoryIndex;
import gapwise.store.DocumentStore;
import gapwise.store.Expected;
import gapwise.store.Soundness;
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

  private Records(DocumentStore store, HomeSoundness soundness) {
    this.store = store;
    this.soundness = soundness;
    this.base = new EvidenceBase(store);
    this.referenceBase = new ReferenceBase(store);
  }

  /** Opens the records of a home folder, making it when it is not there. */
  public static Records open(Path folder, Clock clock) {
    return open(folder, clock, Expected.ANYTHING);
  }

  /** Opens the records of a home folder that was made before; makes none. */
  public static Records openExisting(Path folder, Clock clock) {
    return open(folder, clock, Expected.A_HOME);
  }

  static Records open(Path folder, Clock clock, Expected expected) {
    long seen = IndexTrace.lastChange(indexOf(folder));
    DocumentStore store = DocumentStore.open(folder, clock, expected.withChange(seen));
    try {
      store.notices().forEach(LOG::warn);
      if (store.wasPutBack()) {
        // It may have been made from records that were damaged, which no number of a change tells.
        IndexTrace.discard(indexOf(folder));
      }
      return new Records(store, HomeSoundness.of(store));
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

  /** What stands beside the studies as one file, and from such a file. */
  public CarriedLines carriedLines() {
    return new CarriedLines(store);
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
