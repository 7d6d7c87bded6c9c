package gapwise.decision.weighing;

/**
 * One thing that matters, with a range fixed before any outcome is looked at: a range taken from
 * the data would change what a weight means with every alternative that is added.
 *
 * @param code unique among the criteria of a weighing
 * @param label for people
 * @param worst outcome that is worth 0, finite
 * @param best outcome that is worth 1, finite, other than the worst; may lie below it
 */
public record Criterion(String code, String label, double worst, double best) {
  public Criterion {
    if (code.isBlank() || label.isBlank()) {
      throw new IllegalArgumentException("a criterion needs a code and a label");
    }
    if (!(Double.isFinite(worst) && Double.isFinite(best) && worst != best)) {
      throw new IllegalArgumentException(
          code + " needs a worst and another best outcome, were " + worst + " and " + best);
    }
  }

  /** What an outcome is worth, linear from 0 at the worst to 1 at the best, cut at both. */
  public double value(double outcome) {
    return Math.max(0, Math.min(1, along(outcome)));
  }

  /** Whether an outcome lies outside the range, and so is worth what its end is worth. */
  public boolean cuts(double outcome) {
    double along = along(outcome);
    return along < 0 || along > 1;
  }

  private double along(double outcome) {
    if (Double.isNaN(outcome)) {
      throw new IllegalArgumentException(code + " has an outcome that is no number");
    }
    return (outcome - worst) / (best - worst);
  }
}
