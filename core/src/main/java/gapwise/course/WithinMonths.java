package gapwise.course;

import gapwise.figure.value.Limits;
import java.util.Objects;
import java.util.Optional;

/**
 * The restricted mean: months without the event within a number of months.
 *
 * @param months the estimate
 * @param limits of 95 %, within 0 and the horizon; empty where the estimate has no spread
 * @param curves followed so long
 */
public record WithinMonths(double months, Optional<Limits> limits, int curves) {
  public WithinMonths {
    Objects.requireNonNull(limits, "limits");
  }
}
