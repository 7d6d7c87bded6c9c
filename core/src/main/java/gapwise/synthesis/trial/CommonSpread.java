package gapwise.synthesis.trial;

import gapwise.effect.ArmMean;
import java.util.List;
import java.util.OptionalDouble;

/** How widely patients differ within groups, put together over groups. */
public final class CommonSpread {
  private CommonSpread() {}

  /**
   * The standard deviation within groups: root of the sum of {@code (n - 1) s^2} over the sum of
   * {@code n - 1}. With logs, {@code s^2} of a group is {@code log(1 + (sd/mean)^2)}, the variance
   * of the logarithm of a log-normal value with that mean and standard deviation (Aitchison and
   * Brown, The Lognormal Distribution, 1957, section 2.3).
   *
   * @param logs whether the spread of logarithms is asked; means must then be above 0, others do
   *     not count
   * @return empty if no group of two patients or more tells its spread, or all tell a spread of 0
   */
  public static OptionalDouble of(List<ArmMean> groups, boolean logs) {
    double sum = 0;
    double weight = 0;
    for (ArmMean group : groups) {
      if (usable(group, logs)) {
        double sd = group.sd().getAsDouble();
        double variation = logs ? sd / group.mean().getAsDouble() : sd;
        double square = variation * variation;
        sum += (group.n() - 1) * (logs ? Math.log1p(square) : square);
        weight += group.n() - 1;
      }
    }
    return weight > 0 && sum > 0
        ? OptionalDouble.of(Math.sqrt(sum / weight))
        : OptionalDouble.empty();
  }

  /** How many groups tell their spread. */
  public static int groups(List<ArmMean> groups, boolean logs) {
    return (int) groups.stream().filter(group -> usable(group, logs)).count();
  }

  private static boolean usable(ArmMean group, boolean logs) {
    return group.n() >= 2
        && group.sd().isPresent()
        && group.mean().isPresent()
        && (!logs || group.mean().getAsDouble() > 0);
  }
}
