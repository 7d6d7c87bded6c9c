package gapwise.server.page.map;

import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.server.page.Site;
import java.util.List;

/** What the first page shows: an evidence base at a glance, or that there is none yet. */
public sealed interface EvidenceView {
  /** The frame of the page. */
  Site site();

  /** There is no study yet. */
  record Empty(Site site) implements EvidenceView {}

  /**
   * What there is.
   *
   * @param totals studies, groups and patients
   * @param map groups by method and size
   * @param years groups by year
   * @param added newest imports
   * @param methods methods to ask about, those of which there is any group
   * @param outcomes outcomes to ask about
   * @param start code of the outcome that the question starts with; may be empty
   */
  record Holding(
      Site site,
      Totals totals,
      EvidenceMap map,
      YearBars years,
      List<Added> added,
      List<Method> methods,
      List<Outcome> outcomes,
      String start)
      implements EvidenceView {
    /** Whether an outcome is the one that the question starts with. */
    public boolean startsWith(Outcome outcome) {
      return outcome.code().equals(start);
    }
  }

  /** How many there are, as written. */
  record Totals(String studies, String arms, String patients) {}

  /** One import. */
  record Added(String day, String who, String what) {}
}
