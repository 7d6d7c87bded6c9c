package gapwise.figure.drawing;

import gapwise.figure.value.Check;
import java.util.List;
import java.util.Objects;

/**
 * The words at an axis.
 *
 * @param heading what the numbers are: "of 100", "risk ratio, log axis", "months"
 * @param lower what lies towards lower values, such as "fewer limbs united"; empty for none
 * @param higher what lies towards higher values, such as "more limbs united"; empty for none
 * @param thresholds named lines, such as one at "10 in 100 fewer"
 */
public record AxisWords(String heading, String lower, String higher, List<Threshold> thresholds) {
  public AxisWords {
    Check.words(heading, "heading");
    Objects.requireNonNull(lower, "lower");
    Objects.requireNonNull(higher, "higher");
    thresholds = List.copyOf(thresholds);
  }

  /**
   * A line that a decision hangs on.
   *
   * @param value where it stands, in the unit of the figure's measure
   * @param words its name
   */
  public record Threshold(double value, String words) {
    public Threshold {
      Check.finite(value, "threshold");
      Check.words(words, "words");
    }
  }
}
