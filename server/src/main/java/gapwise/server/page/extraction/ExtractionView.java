package gapwise.server.page.extraction;

import gapwise.server.page.Site;
import java.util.List;

/**
 * Papers that two people extract apart.
 *
 * @param site the frame
 * @param papers those that were opened
 * @param kept references that screening keeps and nobody opened yet, the first of them
 * @param more how many further there are
 * @param form what the form holds to begin with
 * @param agreement whether there is any agreement to be told
 */
public record ExtractionView(
    Site site, List<Line> papers, List<Kept> kept, int more, Form form, boolean agreement) {
  public ExtractionView {
    papers = List.copyOf(papers);
    kept = List.copyOf(kept);
  }

  /**
   * One paper.
   *
   * @param first how far the first is, with the name before it
   * @param second the same of the second
   * @param stage where the paper stands, in words
   */
  public record Line(
      String href, String study, String title, String first, String second, String stage) {}

  /** A reference to be opened. */
  public record Kept(String href, String title, String people) {}

  /** What the form holds. */
  public record Form(String study, String title, String reference) {}
}
