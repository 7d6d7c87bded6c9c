package gapwise.server.page.screening;

import gapwise.server.page.Site;
import java.util.List;
import java.util.Optional;

/** One reference to be chosen or not, or nothing left to read. */
public sealed interface ChooseView {
  /** What the page stands in. */
  Site site();

  /**
   * A choice that can be made.
   *
   * @param value as it is sent
   * @param label as it is read
   * @param key the key that makes it
   * @param mine whether it was chosen before
   */
  record Button(String value, String label, String key, boolean mine) {}

  /**
   * A reference to be read.
   *
   * @param who who reads
   * @param stage word of the stage
   * @param stageLabel the stage as people read it
   * @param paper the reference
   * @param buttons what can be chosen
   * @param left how many are left for this person, this one among them
   * @param before address of what this person chose last; empty for the first
   * @param again whether this person chose of it before
   */
  record One(
      Site site,
      String who,
      String stage,
      String stageLabel,
      Paper paper,
      List<Button> buttons,
      int left,
      Optional<String> before,
      boolean again)
      implements ChooseView {}

  /**
   * Nothing is left for this person.
   *
   * @param apart how many wait because two chose differently
   * @param open how many wait for somebody else
   */
  record Done(
      Site site, String who, String stageLabel, int apart, int open, Optional<String> before)
      implements ChooseView {}
}
