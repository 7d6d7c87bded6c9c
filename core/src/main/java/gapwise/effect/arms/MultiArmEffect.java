package gapwise.effect.arms;

import gapwise.problem.Problem;
import java.util.List;
import java.util.Optional;

/**
 * The effects of one study of two or more arms: each further arm less the first, with their
 * covariances, which the shared first arm brings about.
 *
 * @param effects one for each arm after the first; empty if the study is left out
 * @param covariance a row for each effect
 * @param leftOut why the study cannot enter; empty if it can
 * @param cellsAdded whether something was added to cells with 0
 */
public record MultiArmEffect(
    List<Double> effects,
    List<List<Double>> covariance,
    Optional<Problem> leftOut,
    boolean cellsAdded) {
  public MultiArmEffect {
    effects = List.copyOf(effects);
    covariance = covariance.stream().map(List::copyOf).toList();
    if (leftOut.isEmpty() && (effects.isEmpty() || covariance.size() != effects.size())) {
      throw new IllegalArgumentException("a study that enters needs effects with covariances");
    }
  }

  /** Effects that can enter; overflow to infinity counts as not determined. */
  static MultiArmEffect of(List<Double> effects, List<List<Double>> covariance) {
    boolean finite =
        effects.stream().allMatch(Double::isFinite)
            && covariance.stream().allMatch(row -> row.stream().allMatch(Double::isFinite));
    return finite
        ? new MultiArmEffect(effects, covariance, Optional.empty(), false)
        : leftOut(
            "study-left-out",
            "the numbers are too large or too small for an effect to be worked out");
  }

  /** A study of which nothing can be worked out. */
  static MultiArmEffect leftOut(String code, String message) {
    return new MultiArmEffect(
        List.of(), List.of(), Optional.of(new Problem("", code, message)), false);
  }

  /** The same, saying that something was added to cells of the study. */
  MultiArmEffect withCellsAdded() {
    return new MultiArmEffect(effects, covariance, leftOut, true);
  }
}
