package gapwise.server.page.screening;

import gapwise.server.page.Site;
import java.util.List;

/**
 * Papers of which two people chose differently.
 *
 * @param who who settles; may be empty
 * @param stage word of the stage
 * @param count how many there are
 * @param pairs the first of them
 */
public record ApartView(
    Site site, String who, String stage, String stageLabel, int count, List<One> pairs) {
  /**
   * One of them.
   *
   * @param chosen what each chose, with the reason
   * @param buttons what can hold
   */
  public record One(Paper paper, List<Chosen> chosen, List<ChooseView.Button> buttons) {}

  /** What one person chose. */
  public record Chosen(String who, String choice) {}
}
