package gapwise.synthesis.bayes;

/**
 * What is believed of the mean before the studies, on the analysis scale.
 *
 * @param centre finite; 0 if flat
 * @param precision reciprocal of the variance; 0 if flat
 */
public record MeanPrior(double centre, double precision) {
  /** Every value alike. */
  public static final MeanPrior FLAT = new MeanPrior(0, 0);

  public MeanPrior {
    if (!(Double.isFinite(centre) && precision >= 0 && Double.isFinite(precision))) {
      throw new IllegalArgumentException("no prior: " + centre + " with precision " + precision);
    }
  }

  /**
   * Normal.
   *
   * @param standardDeviation above 0
   */
  public static MeanPrior normal(double mean, double standardDeviation) {
    return new MeanPrior(mean, 1 / (standardDeviation * standardDeviation));
  }

  boolean isFlat() {
    return precision == 0;
  }
}
