package gapwise.effect.arms;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * Effects that are differences of independent values of arms: the variance of an arm against the
 * first is the sum of both, the covariance of two such effects the variance of the first arm (Lu,
 * Welton, Higgins, White and Ades, Res Synth Methods 2011;2:43).
 */
final class ArmDifferences {
  private ArmDifferences() {}

  /**
   * The value of one arm with its variance.
   *
   * @param value on the analysis scale
   * @param variance at least 0
   */
  record ArmValue(double value, double variance) {}

  static <D> MultiArmEffect of(List<D> arms, Function<D, ArmValue> value) {
    ArmValue first = value.apply(arms.get(0));
    List<Double> effects = new ArrayList<>();
    List<List<Double>> covariance = new ArrayList<>();
    for (int i = 1; i < arms.size(); i++) {
      ArmValue arm = value.apply(arms.get(i));
      effects.add(arm.value() - first.value());
      List<Double> row = new ArrayList<>();
      for (int j = 1; j < arms.size(); j++) {
        row.add(i == j ? arm.variance() + first.variance() : first.variance());
      }
      covariance.add(row);
    }
    return MultiArmEffect.of(effects, covariance);
  }
}
