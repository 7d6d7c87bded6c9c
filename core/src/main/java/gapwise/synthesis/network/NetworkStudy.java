package gapwise.synthesis.network;

import java.util.HashSet;
import java.util.List;

/**
 * One study of two or more treatments: the effect of each further treatment less the first, with
 * their covariances.
 *
 * @param label for people
 * @param treatments two or more, each once
 * @param effects one less than treatments, on the analysis scale, finite
 * @param covariance symmetric, a row for each effect, finite
 */
public record NetworkStudy(
    String label, List<String> treatments, List<Double> effects, List<List<Double>> covariance) {
  public NetworkStudy {
    treatments = List.copyOf(treatments);
    effects = List.copyOf(effects);
    covariance = covariance.stream().map(List::copyOf).toList();
    int contrasts = treatments.size() - 1;
    boolean square =
        covariance.size() == contrasts
            && covariance.stream().allMatch(row -> row.size() == contrasts);
    if (contrasts < 1 || effects.size() != contrasts || !square) {
      throw new IllegalArgumentException(
          label + ": " + treatments.size() + " treatments with " + effects.size() + " effects");
    }
    if (new HashSet<>(treatments).size() != treatments.size()) {
      throw new IllegalArgumentException(label + " has a treatment twice: " + treatments);
    }
  }

  /** Effects less one than treatments. */
  public int contrasts() {
    return effects.size();
  }

  /** Variance of the effect of the treatment at one place against that at another, from 0. */
  public double variance(int one, int other) {
    if (one == 0 || other == 0) {
      int further = Math.max(one, other) - 1;
      return covariance.get(further).get(further);
    }
    int i = one - 1;
    int j = other - 1;
    return covariance.get(i).get(i) + covariance.get(j).get(j) - 2 * covariance.get(i).get(j);
  }
}
