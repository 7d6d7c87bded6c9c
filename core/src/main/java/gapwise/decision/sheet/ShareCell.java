package gapwise.decision.sheet;

import gapwise.decision.certainty.Level;
import gapwise.figure.array.HundredArray;
import java.util.Objects;
import java.util.Optional;

/**
 * How many of 100, for patients.
 *
 * @param sentence the number in the words of its certainty, or why there is none
 * @param range the other side and the range that fits, in a sentence; empty where there is none
 * @param array the marks; empty where there is no interval to draw
 * @param level how certain it is; empty where there is no number
 * @param alternative the three numbers for those who cannot see the marks; empty without marks
 */
public record ShareCell(
    String sentence,
    String range,
    Optional<HundredArray> array,
    Optional<Level> level,
    String alternative) {
  public ShareCell {
    Objects.requireNonNull(sentence, "sentence");
    Objects.requireNonNull(range, "range");
    Objects.requireNonNull(array, "array");
    Objects.requireNonNull(level, "level");
    Objects.requireNonNull(alternative, "alternative");
  }

  /** Why there is no number. */
  static ShareCell without(String why) {
    return new ShareCell(why, "", Optional.empty(), Optional.empty(), "");
  }
}
