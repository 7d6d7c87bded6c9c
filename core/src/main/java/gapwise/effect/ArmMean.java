package gapwise.effect;

import java.util.List;
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

  /**
   * Reads a mean as {@link #read}, or, where the row has none, the mean change of the same patients
   * from {@code before.mean} to {@code after.mean}. Its standard deviation is root(b^2 + a^2 - 2 r
   * b a) with those before and after and the correlation r of the row, else of the plan (Cochrane
   * Handbook, 6.5.2.8); empty if one of the three is.
   *
   * @param correlation where a row names none, from -1 to 1
   */
  static Optional<ArmMean> readOrChange(Reported row, String group, OptionalDouble correlation) {
    OptionalDouble before = row.number(Reported.role(group, "before.mean"));
    OptionalDouble after = row.number(Reported.role(group, "after.mean"));
    boolean reported = row.number(Reported.role(group, "mean")).isPresent();
    if (reported || before.isEmpty() || after.isEmpty()) {
      return read(row, group);
    }
    OptionalDouble n = row.requiredCount(Reported.role(group, "n"), 1);
    OptionalDouble ofChange = row.optional(Reported.role(group, "sd"), 0);
    OptionalDouble sd = ofChange.isPresent() ? ofChange : changeSd(row, group, correlation);
    double change = after.getAsDouble() - before.getAsDouble();
    return n.isEmpty()
        ? Optional.empty()
        : Optional.of(new ArmMean(n.getAsDouble(), OptionalDouble.of(change), sd, false, false));
  }

  private static OptionalDouble changeSd(Reported row, String group, OptionalDouble usual) {
    OptionalDouble before = row.optional(Reported.role(group, "before.sd"), 0);
    OptionalDouble after = row.optional(Reported.role(group, "after.sd"), 0);
    String role = Reported.role(group, "correlation");
    OptionalDouble own = row.number(role);
    if (own.isPresent() && Math.abs(own.getAsDouble()) > 1) {
      row.wrong(
          role,
          "out-of-range",
          "found "
              + own.getAsDouble()
              + ", expected a correlation from -1 to 1; correct the value");
      return OptionalDouble.empty();
    }
    OptionalDouble r = own.isPresent() ? own : usual;
    if (before.isEmpty() || after.isEmpty() || r.isEmpty()) {
      return OptionalDouble.empty();
    }
    double b = before.getAsDouble();
    double a = after.getAsDouble();
    // (b - a)^2 + 2 (1 - r) a b, which does not cancel where both are near each other
    return OptionalDouble.of(Math.sqrt((b - a) * (b - a) + 2 * (1 - r.getAsDouble()) * a * b));
  }

  /** Squared standard error of the mean; empty without a standard deviation of two patients. */
  public OptionalDouble squaredStandardError() {
    return sd.isEmpty() || n < 2
        ? OptionalDouble.empty()
        : OptionalDouble.of(sd.getAsDouble() / n * sd.getAsDouble());
  }

  /** The same with another standard deviation. */
  ArmMean withSd(double other) {
    return new ArmMean(n, mean, OptionalDouble.of(other), fromMedian, looksSkewed);
  }

  @Override
  public List<ArmMean> means() {
    return List.of(this);
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

  /**
   * How far patients lie from the mean of their own group, in the unit of the groups: the root of
   * the mean of the groups' variances weighted by n - 1, the pooled variance of every textbook.
   *
   * @return empty where no group of two patients reports one
   */
  public static OptionalDouble pooledDeviation(List<ArmMean> groups) {
    List<ArmMean> told =
        groups.stream().filter(one -> one.sd().isPresent() && one.n() > 1).toList();
    double freedom = told.stream().mapToDouble(one -> one.n() - 1).sum();
    double largest = told.stream().mapToDouble(one -> one.sd().getAsDouble()).max().orElse(0);
    if (told.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (largest == 0 || Double.isInfinite(largest)) {
      return OptionalDouble.of(largest);
    }
    double squares = 0;
    for (ArmMean one : told) {
      // Over the largest, so that no square leaves the range of numbers.
      double part = one.sd().getAsDouble() / largest;
      squares += (one.n() - 1) * part * part;
    }
    return OptionalDouble.of(largest * Math.sqrt(squares / freedom));
  }
}
