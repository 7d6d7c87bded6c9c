package gapwise.server.home;

import gapwise.curation.EvidenceBase;
import gapwise.curation.ReferenceBase;
import gapwise.curation.StudiesAt;
import gapwise.evidence.Citation;
import gapwise.reference.kept.Compared;
import gapwise.reference.kept.KeptLine;
import gapwise.reference.kept.KeptReference;
import gapwise.reference.kept.OpenPair;
import gapwise.reference.kept.PairsAsked;
import gapwise.reference.kept.ReferenceDecision;
import gapwise.reference.kept.Shelf;
import gapwise.reference.pair.Standing;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicBoolean;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The kept references of one home as they stand now, in brief in memory, and what is proposed of
 * them. A few are compared when first asked; many are compared in the background, and until that is
 * done what follows from it is not told. What a person settles needs no new comparing. Safe for use
 * by many threads.
 */
public final class References implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(References.class);

  /** References that are compared while somebody waits: about a second on a slow core. */
  private static final int FEW = 1_000;

  /** For what other processes write; what this one writes is seen at once. */
  private static final long LOOKS_APART_NANOSECONDS = 250_000_000;

  private final ReferenceBase base;
  private final EvidenceBase evidence;
  private final AtomicBoolean written = new AtomicBoolean(true);
  private final Map<String, KeptLine> lines = new HashMap<>();
  private final Map<String, ReferenceDecision> decisions = new HashMap<>();
  private final Map<String, Citation> studies = new HashMap<>();

  private Optional<Long> seen = Optional.empty();
  private boolean studiesRead;
  private long looked;

  /** Counts what is compared: a reference or a citation that is new or says something else. */
  private long edition;

  private Shelf shelf = Shelf.of(List.of(), List.of());
  private Optional<Edition> compared = Optional.empty();
  private Optional<Asked> asked = Optional.empty();
  private boolean comparing;

  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "references-compared");
            thread.setDaemon(true);
            thread.setPriority(Thread.MIN_PRIORITY);
            return thread;
          });

  /** What was compared, and which edition it was. */
  private record Edition(long number, Compared compared) {}

  /** What is asked of one edition after some decisions. */
  private static final class Asked {
    private final Shelf shelf;
    private final PairsAsked pairs;
    private Optional<List<OpenPair>> open = Optional.empty();
    private Optional<Map<String, List<Standing>>> standings = Optional.empty();

    Asked(Shelf shelf, Compared compared) {
      this.shelf = shelf;
      this.pairs = PairsAsked.of(compared, shelf.decisions(), shelf.groups());
    }

    List<OpenPair> open() {
      if (open.isEmpty()) {
        open = Optional.of(pairs.open());
      }
      return open.get();
    }

    Map<String, List<Standing>> standings() {
      if (standings.isEmpty()) {
        standings = Optional.of(pairs.standings());
      }
      return standings.get();
    }
  }

  References(ReferenceBase base, EvidenceBase evidence) {
    this.base = base;
    this.evidence = evidence;
    base.onWrite(() -> written.set(true));
  }

  /** All of them in brief, with what was settled. */
  public synchronized Shelf shelf() {
    refresh();
    return shelf;
  }

  /** The pairs that a person is asked about; empty while the references are being compared. */
  public synchronized Optional<List<OpenPair>> open() {
    return asked().map(Asked::open);
  }

  /**
   * What the kept references say became of papers, by member; empty while they are being compared.
   */
  public synchronized Optional<Map<String, List<Standing>>> standings() {
    return asked().map(Asked::standings);
  }

  /**
   * A hash of what two members say now, on which a decision about them stands; empty where one of
   * them is not there, or while they are being compared.
   */
  public synchronized Optional<String> stoodOn(String one, String other) {
    return asked().flatMap(now -> compared).flatMap(now -> now.compared().stoodOn(one, other));
  }

  private Optional<Asked> asked() {
    refresh();
    readStudies();
    long now = edition;
    if (compared.filter(one -> one.number() == now).isEmpty()) {
      asked = Optional.empty();
      if (lines.size() > FEW) {
        compareLater();
        return Optional.empty();
      }
      compared = Optional.of(new Edition(now, Compared.of(shelf.lines(), studies)));
    }
    if (asked.filter(one -> one.shelf == shelf).isEmpty()) {
      asked = compared.map(one -> new Asked(shelf, one.compared()));
    }
    return asked;
  }

  private void compareLater() {
    if (comparing || worker.isShutdown()) {
      return;
    }
    comparing = true;
    long number = edition;
    List<KeptLine> all = shelf.lines();
    Map<String, Citation> citations = Map.copyOf(studies);
    worker.execute(
        () -> {
          Optional<Edition> done = Optional.empty();
          try {
            done = Optional.of(new Edition(number, Compared.of(all, citations)));
          } catch (RuntimeException failure) {
            LOG.error("kept references could not be compared", failure);
          } finally {
            end(done);
          }
        });
  }

  private synchronized void end(Optional<Edition> done) {
    comparing = false;
    if (done.isPresent()) {
      compared = done;
    }
  }

  /** Takes in what was written since it was last asked. */
  private void refresh() {
    long now = System.nanoTime();
    if (!written.getAndSet(false) && now - looked < LOOKS_APART_NANOSECONDS) {
      return;
    }
    looked = now;
    long last = base.lastChange();
    if (seen.filter(change -> change >= last).isPresent()) {
      return;
    }
    if (seen.isEmpty()) {
      // A change between the two is read twice, which does no harm.
      base.forEach(kept -> lines.put(kept.id(), KeptLine.of(kept)));
      base.decisions().forEach(one -> decisions.put(one.key(), one));
      shelf = Shelf.of(lines.values(), decisions.values());
      edition++;
      seen = Optional.of(last);
      return;
    }
    Taking taking = new Taking();
    seen = Optional.of(base.changesAfter(seen.get(), taking));
    if (taking.references) {
      shelf = Shelf.of(lines.values(), decisions.values());
    } else if (taking.decided) {
      shelf = shelf.withDecisions(decisions.values());
    }
    if (studiesRead) {
      StudiesAt latest = evidence.latest();
      taking.studies.forEach(id -> takeStudy(id, latest));
    }
  }

  /** Studies are read only where there is something to be held against them. */
  private void readStudies() {
    if (!studiesRead && !lines.isEmpty()) {
      evidence
          .latest()
          .forEachSound(kept -> studies.put(kept.study().id(), kept.study().citation()));
      studiesRead = true;
      edition++;
    }
  }

  private void takeStudy(String id, StudiesAt now) {
    Optional<Citation> citation = now.study(id).map(kept -> kept.study().citation());
    Optional<Citation> before = Optional.ofNullable(studies.get(id));
    if (!citation.equals(before)) {
      edition++;
      citation.ifPresentOrElse(told -> studies.put(id, told), () -> studies.remove(id));
    }
  }

  private final class Taking implements ReferenceBase.Changes {
    private final Set<String> studies = new HashSet<>();
    private boolean references;
    private boolean decided;

    @Override
    public void reference(KeptReference kept) {
      KeptLine line = KeptLine.of(kept);
      Optional<KeptLine> before = Optional.ofNullable(lines.put(kept.id(), line));
      references = true;
      if (before.filter(one -> one.stoodOn().equals(line.stoodOn())).isEmpty()) {
        edition++;
      }
    }

    @Override
    public void decision(ReferenceDecision decision) {
      decisions.put(decision.key(), decision);
      decided = true;
    }

    @Override
    public void study(String id) {
      studies.add(id);
    }
  }

  @Override
  public void close() {
    worker.shutdownNow();
  }
}
