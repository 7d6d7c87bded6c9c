package gapwise.server.home;

import gapwise.curation.StudiesAt;
import gapwise.figure.flow.FlowChart;
import gapwise.search.IndexTrace;
import gapwise.search.MemoryIndex;
import gapwise.store.StorePlace;
import java.time.Clock;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * One state of a home for a command that reads and asks searches. The index of a home is followed
 * by one process; where that is another, such as a server, an index of this state is made in
 * memory: about 15 seconds for 100,000 groups.
 */
public final class Reading implements AutoCloseable {
  private final Evidence evidence;
  private final Supplier<Optional<FlowChart>> flow;
  private final Runnable end;

  private Reading(Evidence evidence, Supplier<Optional<FlowChart>> flow, Runnable end) {
    this.evidence = evidence;
    this.flow = flow;
    this.end = end;
  }

  /** Opens a home folder that was made before and takes the state in which it is. */
  public static Reading of(StorePlace place, Clock clock) {
    return IndexTrace.isInUse(Records.indexOf(place.home()))
        ? besideAnother(Records.openExisting(place, clock))
        : alone(Home.openExisting(place, clock));
  }

  private static Reading alone(Home home) {
    Hold hold = home.hold();
    return new Reading(
        hold.evidence(),
        () -> home.screeningFlow().drawn(),
        () -> {
          hold.close();
          home.close();
        });
  }

  private static Reading besideAnother(Records records) {
    try {
      StudiesAt studies = records.studies();
      Evidence evidence =
          new Evidence(
              MemoryIndex.of(
                  each -> studies.forEachSound(kept -> each.accept(kept.study())),
                  studies.change()),
              studies);
      return new Reading(evidence, records::screeningFlow, records::close);
    } catch (RuntimeException failure) {
      records.close();
      throw failure;
    }
  }

  /** The state. */
  public Evidence evidence() {
    return evidence;
  }

  /** The flow of records through the screening as it stands; empty where no reference is kept. */
  public Optional<FlowChart> screeningFlow() {
    return flow.get();
  }

  @Override
  public void close() {
    end.run();
  }
}
