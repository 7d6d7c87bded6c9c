package gapwise.server.page.screening;

import static gapwise.sentence.Sentences.say;

import gapwise.curation.ReferenceBase.StampedLoad;
import gapwise.reference.kept.KeptSearch;
import gapwise.screening.Flow;
import gapwise.server.home.Home;
import gapwise.server.home.Screening;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;

/** Counts the flow of records from all that is kept of references, searches and choices. */
public final class FlowNow {
  private FlowNow() {}

  /** The flow of records as screening stands. */
  public static Flow of(Home home, Screening.Shown shown) {
    return Flow.of(
        shown.board(),
        identified(home, shown),
        home.screening().base().protocol().reasons(),
        reference -> shown.shelf().groups().studies(reference));
  }

  /**
   * Records by the database that a search names for their file, else by the file. What was loaded
   * again by another export counts again, and is a copy.
   */
  private static Map<String, Integer> identified(Home home, Screening.Shown shown) {
    Map<String, String> databases = new HashMap<>();
    for (KeptSearch search : home.referenceBase().searches()) {
      search.load().ifPresent(load -> databases.putIfAbsent(load, search.search().database()));
    }
    Map<String, Integer> counts = new TreeMap<>();
    int told = 0;
    for (StampedLoad load : home.referenceBase().loads()) {
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
}
