package gapwise.decision.option;

/**
 * How probable it is that two methods differ by more than a difference that matters.
 *
 * @param matters the difference, above 0
 * @param firstMore that the first has more, by more than that
 * @param secondMore that the second has
 */
public record Chances(double matters, double firstMore, double secondMore) {
  private static final double ROUNDING = 1e-9;

  public Chances {
    if (!(matters > 0)
        || !(firstMore >= 0 && secondMore >= 0)
        || firstMore + secondMore > 1 + ROUNDING) {
      throw new IllegalArgumentException(
          "probabilities of a difference of " + matters + ": " + firstMore + ", " + secondMore);
    }
  }

  /** That they differ by less. */
  public double within() {
    return Math.max(0, 1 - firstMore - secondMore);
  }

  /** Of two averages known apart. */
  static Chances of(Distribution first, Distribution second, double matters) {
    return new Chances(matters, first.exceeds(second, matters), second.exceeds(first, matters));
  }
}
