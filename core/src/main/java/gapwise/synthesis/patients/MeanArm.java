package gapwise.synthesis.patients;

/**
 * The mean of a measurement in an arm whose patients are not known one by one.
 *
 * @param mean on the analysis scale
 * @param variance squared standard error of the mean, above 0
 * @param moderator its mean in the arm
 */
public record MeanArm(double mean, double variance, double moderator) {
  public MeanArm {
    if (!Double.isFinite(mean)
        || !(variance > 0 && Double.isFinite(variance))
        || !Double.isFinite(moderator)) {
      throw new IllegalArgumentException(
          "no arm: " + mean + " with variance " + variance + " at " + moderator);
    }
  }
}
