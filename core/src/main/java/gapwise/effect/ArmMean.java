package gapwise.effect;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Mean and spread of a quantity in one group.
 *
 * @param n patients, at least 1
 * @param mean in the unit reported; empty if neither mean nor median is reported
 * @param sd standard deviation, at least 0; empty if none is reported or can be had
 * @param fromMedian whether mean or standard deviation were worked out from a median
 * @param looksSkewed whether that median lies too far to one side for values near normal
 */
public record ArmMean(
    double n, OptionalDouble mean, OptionalDouble sd, boolean fromMedian, boolean looksSkewed)
    implements StudyData {
  public ArmMean {
    if (!(n >= 1) || sd.orElse(0) < 0) {
      throw new IllegalArgumentException("no mean of a group: n " + n + ", sd " + sd);
    }
  }

  /**
   * Reads {@code n}, {@code mean}, {@code sd} of a group. A row with a median and no mean gets the
   * mean of Luo and colleagues (2018) and, if it has no standard deviation either, that of Wan and
   * colleagues (2014), from whichever of quartiles and range are reported.
   */
  public static Optional<ArmMean> read(Reported row, String group) {
    OptionalDouble n = row.requiredCount(Reported.role(group, "n"), 1);
    OptionalDouble sd = row.optional(Reported.role(group, "sd"), 0);
    OptionalDouble mean = row.number(Reported.role(group, "mean"));
    if (n.isEmpty()) {
      return Optional.empty();
    }
    if (mean.isPresent()) {
      return Optional.of(new ArmMean(n.getAsDouble(), mean, sd, false, false));
    }
    Optional<FiveNumbers> reported = FiveNumbers.read(row, group, n.getAsDouble());
    if (reported.isEmpty()) {
      row.missing(Reported.role(group, "mean"));
      return Optional.empty();
    }
    OptionalDouble converted = MedianConversion.LUO_2018.mean(reported.get());
    if (converted.isEmpty()) {
      row.missing(Reported.role(group, "mean"));
      return Optional.empty();
    }
    OptionalDouble spread = sd.isPresent() ? sd : MedianConversion.WAN_2014.sd(reported.get());
    return Optional.of(
        new ArmMean(n.getAsDouble(), converted, spread, true, reported.get().looksSkewed()));
  }

  /** Squared standard error of the mean; empty without a standard deviation of two patients. */
  public OptionalDouble squaredStandardError() {
    return sd.isEmpty() || n < 2
        ? OptionalDouble.empty()
        : OptionalDouble.of(sd.getAsDouble() / n * sd.getAsDouble());
  }

  @Override
  public int arms() {
    return 1;
  }

  @Override
  public OptionalDouble participants() {
    return OptionalDouble.of(n);
  }

  @Override
  public OptionalDouble allEvents() {
    return OptionalDouble.empty();
  }
}
