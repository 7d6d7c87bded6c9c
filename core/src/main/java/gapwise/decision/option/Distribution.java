package gapwise.decision.option;

import java.util.List;

/**
 * What a posterior says of one number, at points from which it is read straight between them.
 *
 * @param places rising values
 * @param below the probability that the number lies below each, 0 to 1, never falling
 */
public record Distribution(List<Double> places, List<Double> below) {
  private static final int DRAWS = 400;

  public Distribution {
    places = List.copyOf(places);
    below = List.copyOf(below);
    if (places.size() < 2 || places.size() != below.size()) {
      throw new IllegalArgumentException("two places at least, were " + places);
    }
    for (int i = 1; i < places.size(); i++) {
      if (!(places.get(i) > places.get(i - 1)) || !(below.get(i) >= below.get(i - 1))) {
        throw new IllegalArgumentException("places and probabilities rise, were " + places);
      }
    }
  }

  /**
   * The value below which the number lies with a probability; the outermost place beyond them.
   *
   * @param probability 0 to 1
   */
  public double quantile(double probability) {
    if (probability <= below.get(0)) {
      return places.get(0);
    }
    for (int i = 1; i < places.size(); i++) {
      if (probability <= below.get(i)) {
        double step = below.get(i) - below.get(i - 1);
        double part = step > 0 ? (probability - below.get(i - 1)) / step : 1;
        return places.get(i - 1) + part * (places.get(i) - places.get(i - 1));
      }
    }
    return places.get(places.size() - 1);
  }

  /**
   * The probability that this number exceeds another, known apart, by more than a difference: over
   * evenly spaced quantiles of both.
   */
  public double exceeds(Distribution other, double difference) {
    double[] own = quantiles();
    double[] others = other.quantiles();
    // Both rise, so one walk through the others does for all of ours.
    long above = 0;
    int passed = 0;
    for (double one : own) {
      while (passed < others.length && one - others[passed] > difference) {
        passed++;
      }
      above += passed;
    }
    return (double) above / ((long) own.length * others.length);
  }

  private double[] quantiles() {
    double[] values = new double[DRAWS];
    for (int i = 0; i < DRAWS; i++) {
      values[i] = quantile((i + 0.5) / DRAWS);
    }
    return values;
  }
}
