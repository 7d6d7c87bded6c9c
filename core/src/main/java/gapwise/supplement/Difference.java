package gapwise.supplement;

import java.util.Objects;

/**
 * A field of a result that is another than before.
 *
 * @param field where it stands in the result, such as summary.estimate
 * @param before what was written
 * @param after what came out now
 */
public record Difference(String field, String before, String after) {
  /** What stands for a field that is not there. */
  static final String NOTHING = "nothing";

  public Difference {
    Objects.requireNonNull(field, "field");
    Objects.requireNonNull(before, "before");
    Objects.requireNonNull(after, "after");
  }
}
