package gapwise.server.home;

import static gapwise.sentence.Sentences.say;

import gapwise.curation.ReferenceBase;
import gapwise.curation.ReferenceBase.StampedLoad;
import gapwise.figure.FigureProvenance;
import gapwise.figure.flow.FlowChart;
import gapwise.figure.value.SeriesCount;
import gapwise.reference.kept.KeptSearch;
import gapwise.screening.Flow;
import gapwise.screening.drawn.FlowFigure;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What became of the references that were found, counted and drawn. */
public final class ScreeningFlow {
  private final Screening screening;
  private final ReferenceBase references;

  ScreeningFlow(Screening screening, ReferenceBase references) {
    this.screening = screening;
    this.references = references;
  }

  /** It as it stands, drawn; empty where no reference is kept. */
  public Optional<FlowChart> drawn() {
    Screening.Shown shown = screening.shown();
    return shown.shelf().papers() == 0 ? Optional.empty() : Optional.of(chart(flow(shown)));
  }

  /** It as it stands, drawn even where nothing is kept. */
  public FlowChart chart() {
    return chart(flow(screening.shown()));
  }

  /** The counts of one state. */
  public Flow flow(Screening.Shown shown) {
    return Flow.of(
        shown.board(),
        identified(shown),
        screening.base().protocol().reasons(),
        reference -> shown.shelf().groups().studies(reference));
  }

  /**
   * Records by the database that a search names for their file, else by the file. What was loaded
   * again by another export counts again, and is a copy.
   */
  private Map<String, Integer> identified(Screening.Shown shown) {
    Map<String, String> databases = new HashMap<>();
    for (KeptSearch search : references.searches()) {
      search.load().ifPresent(load -> databases.putIfAbsent(load, search.search().database()));
    }
    Map<String, Integer> counts = new TreeMap<>();
    int told = 0;
    for (StampedLoad load : references.loads()) {
      int records = load.load().added() + load.load().changed() + load.load().known();
      String name = databases.getOrDefault(load.load().file().load(), load.load().file().file());
      counts.merge(name, records, Integer::sum);
      told += records;
    }
    int others = shown.shelf().papers() - told;
    if (others > 0) {
      counts.merge(say("screening.other-ways"), others, Integer::sum);
    }
    counts.values().removeIf(count -> count == 0);
    return counts;
  }

  /** The counts drawn. */
  public FlowChart chart(Flow flow) {
    long change = screening.base().lastChange();
    Optional<LocalDate> day =
        screening.base().changedAt(change).map(when -> LocalDate.ofInstant(when, ZoneOffset.UTC));
    return FlowFigure.of(
        flow, new FigureProvenance(SeriesCount.of(0), "", "", state(change, day), day, false));
  }

  private static String state(long change, Optional<LocalDate> day) {
    String number = Long.toString(change);
    return day.map(
            date ->
                say("screening.change-of-day", Map.of("date", date.toString(), "change", number)))
        .orElseGet(() -> say("screening.change", Map.of("change", number)));
  }
}
