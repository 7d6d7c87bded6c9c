package gapwise.server.page.map;

import gapwise.server.address.PagePaths;
import gapwise.server.page.Site;
import gapwise.server.page.part.FilterForm;
import java.util.List;

/** What the map of sizes shows: places counted, or that there is no study yet. */
public sealed interface MapView {
  /** The frame of the page. */
  Site site();

  /** Outcomes and filters to choose from. */
  FilterForm form();

  /** No method has a line. */
  record Empty(Site site, FilterForm form) implements MapView {}

  /**
   * Places counted.
   *
   * @param sentences what the map says, the most telling first
   * @param map methods by size
   * @param gaps emptiest questions
   * @param strata emptiest questions among infected and among not infected
   * @param untold methods of which nothing at all is recorded, by name
   */
  record Counted(
      Site site,
      FilterForm form,
      List<String> sentences,
      EvidenceMap map,
      List<GapLine> gaps,
      List<Stratum> strata,
      List<String> untold)
      implements MapView {

    /** Address of the map as a table of values. */
    public String csv() {
      return form.address().at(PagePaths.MAP + ".csv");
    }
  }

  /**
   * A question that nothing recorded answers.
   *
   * @param words the question as a sentence
   * @param ground why one would expect something there
   * @param href what is recorded of the method at any size
   */
  record GapLine(String words, String ground, String href) {}

  /** Questions that are empty only among some of the patients. */
  record Stratum(String heading, List<GapLine> gaps) {}
}
