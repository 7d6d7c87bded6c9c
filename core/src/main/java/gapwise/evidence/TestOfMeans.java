package gapwise.evidence;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * The unpaired t test of a mean against the mean of another arm, with the exact numbers that a
 * paper prints of it. A bound, such as p under 0.05, is none of these.
 *
 * @param against the other arm
 * @param t its statistic, not 0, in either direction
 * @param pValue two-sided, above 0 and below 1
 */
public record TestOfMeans(String against, OptionalDouble t, OptionalDouble pValue) {
  public TestOfMeans {
    Ids.require("arm id", against);
    Objects.requireNonNull(t, "t");
    Objects.requireNonNull(pValue, "pValue");
    if (t.isEmpty() && pValue.isEmpty()) {
      throw new IllegalArgumentException("a test needs its t statistic or its p value");
    }
    if (t.isPresent() && !(Double.isFinite(t.getAsDouble()) && t.getAsDouble() != 0)) {
      throw new IllegalArgumentException("t must not be 0, was " + t.getAsDouble());
    }
    if (pValue.isPresent() && !(pValue.getAsDouble() > 0 && pValue.getAsDouble() < 1)) {
      throw new IllegalArgumentException(
          "p must lie above 0 and below 1, was " + pValue.getAsDouble());
    }
  }
}
