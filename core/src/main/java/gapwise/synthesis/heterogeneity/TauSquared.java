package gapwise.synthesis.heterogeneity;

/** An estimate of the variance between studies, or why there is none. */
public sealed interface TauSquared {
  /**
   * An estimate.
   *
   * @param value at least 0, in squared units of the effect
   * @param converged whether a search for it ended as exactly as doubles allow
   */
  record Estimate(double value, boolean converged) implements TauSquared {
    public Estimate {
      if (!(value >= 0 && Double.isFinite(value))) {
        throw new IllegalArgumentException("tau squared must be at least 0, was " + value);
      }
    }
  }

  /**
   * There is none.
   *
   * @param code kebab-case word
   * @param reason for people
   */
  record NotEstimable(String code, String reason) implements TauSquared {}

  /** An estimate by a formula, cut at 0. */
  static TauSquared cut(double value) {
    return new Estimate(Math.max(0, value), true);
  }
}
