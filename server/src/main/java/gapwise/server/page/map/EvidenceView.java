package gapwise.server.page.map;

import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.address.TypedWords;
import gapwise.server.page.Site;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** What the first page shows: an evidence base at a glance, or that there is none yet. */
public sealed interface EvidenceView {
  /** The frame of the page. */
  Site site();

  /** Questions that the words of the box ask, each with its result. */
  default List<Example> examples() {
    return Example.ALL;
  }

  /** A question in plain words, and the address that a press of Enter would lead to. */
  record Example(String words, String href) {
    private static final List<Example> ALL =
        Stream.of(
                "8 cm infected tibia, transport or membrane",
                "primary union after an induced membrane, 4 to 6 cm",
                "refracture after bone transport, followed 2 years")
            .map(words -> new Example(words, asking(words)))
            .toList();

    private static String asking(String words) {
      return new Address(Map.of(TypedWords.BOX, List.of(words))).at(PagePaths.ASK);
    }
  }

  /** There is no study yet. */
  record Empty(Site site) implements EvidenceView {}

  /**
   * What there is.
   *
   * @param totals studies, groups and patients
   * @param map groups by method and size
   * @param years groups by year
   * @param added newest imports
   */
  record Holding(Site site, Totals totals, EvidenceMap map, YearBars years, List<Added> added)
      implements EvidenceView {}

  /** How many there are, as written. */
  record Totals(String studies, String arms, String patients) {}

  /** One import. */
  record Added(String day, String who, String what) {}
}
