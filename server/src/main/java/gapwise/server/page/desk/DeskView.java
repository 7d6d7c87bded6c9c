package gapwise.server.page.desk;

import gapwise.server.page.Site;
import java.util.List;

/**
 * The drafts of this home.
 *
 * @param site the frame of the page
 * @param drafts the last kept first
 */
public record DeskView(Site site, List<Line> drafts) {
  public DeskView {
    drafts = List.copyOf(drafts);
  }

  /**
   * One draft.
   *
   * @param href its page
   * @param name the study's name
   * @param title title of the paper; empty text where none is typed yet
   * @param about whether it is new or changes a version, and how far it is
   * @param kept when and by whom it was last kept
   */
  public record Line(String href, String name, String title, String about, String kept) {}
}
