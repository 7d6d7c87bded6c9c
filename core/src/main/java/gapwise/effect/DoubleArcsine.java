package gapwise.effect;

/**
 * Freeman and Tukey's double arcsine (Ann Math Stat 1950;21:607), as half the sum of the two
 * arcsines, and Miller's way back (Am Stat 1978;32:138).
 *
 * <p>The way back needs one number of patients where the studies have many. It can mislead when
 * totals differ much (Schwarzer et al., Res Synth Methods 2019;10:476), so results also show what
 * other numbers would give.
 */
final class DoubleArcsine {
  private DoubleArcsine() {}

  static double of(ArmCounts c) {
    double x = c.events();
    double rest = c.nonEvents();
    return (Math.atan2(Math.sqrt(x), Math.sqrt(rest + 1))
            + Math.atan2(Math.sqrt(x + 1), Math.sqrt(rest)))
        / 2;
  }

  /**
   * The proportion whose double arcsine in n patients is the value.
   *
   * @param value half-sum of arcsines
   * @param n patients, above 0
   * @return 0 or 1 where the value is outside what n patients can reach
   */
  static double toProportion(double value, double n) {
    double least = Math.atan2(1, Math.sqrt(n)) / 2;
    if (value <= least) {
      return 0;
    }
    if (value >= Math.PI / 2 - least) {
      return 1;
    }
    double sum = 2 * value;
    double sine = Math.sin(sum);
    double inner = sine + (sine - 1 / sine) / n;
    double root = Math.sqrt(Math.max(0, 1 - inner * inner));
    double proportion = (1 - Math.signum(Math.cos(sum)) * root) / 2;
    return Math.max(0, Math.min(1, proportion));
  }
}
