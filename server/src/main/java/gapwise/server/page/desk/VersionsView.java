package gapwise.server.page.desk;

import gapwise.server.page.Site;
import java.util.List;

/**
 * Two versions of a study beside each other.
 *
 * @param site the frame of the page
 * @param study name of the study
 * @param href its page
 * @param from the earlier version
 * @param to the later one
 * @param last number of the last version, which a restored one would follow
 * @param changes each field that differs
 */
public record VersionsView(
    Site site, String study, String href, Side from, Side to, int last, List<Line> changes) {
  public VersionsView {
    changes = List.copyOf(changes);
  }

  /**
   * One version.
   *
   * @param number from 1
   * @param stamp when, by whom and why
   * @param withdrawn whether the study was withdrawn with it
   */
  public record Side(int number, String stamp, boolean withdrawn) {}

  /** One field that differs: where, what, before and after. */
  public record Line(String where, String field, String before, String after) {}
}
