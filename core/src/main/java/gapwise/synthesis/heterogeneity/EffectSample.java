package gapwise.synthesis.heterogeneity;

import gapwise.numeric.TermSum;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/** Effects of k studies with their variances, in a fixed order. Immutable. */
public final class EffectSample {
  private final double[] effects;
  private final double[] variances;
  private final int mostExact;

  private EffectSample(double[] effects, double[] variances) {
    this.effects = effects;
    this.variances = variances;
    int least = 0;
    for (int i = 1; i < variances.length; i++) {
      least = variances[i] < variances[least] ? i : least;
    }
    this.mostExact = least;
  }

  /**
   * A sample.
   *
   * @param effects finite
   * @param variances finite, at least 0, as many
   */
  public static EffectSample of(List<Double> effects, List<Double> variances) {
    return of(
        effects.stream().mapToDouble(Double::doubleValue).toArray(),
        variances.stream().mapToDouble(Double::doubleValue).toArray());
  }

  /** The same from arrays, which are copied. */
  public static EffectSample of(double[] effects, double[] variances) {
    if (effects.length != variances.length) {
      throw new IllegalArgumentException(
          effects.length + " effects with " + variances.length + " variances");
    }
    for (int i = 0; i < effects.length; i++) {
      if (!Double.isFinite(effects[i]) || !Double.isFinite(variances[i]) || variances[i] < 0) {
        throw new IllegalArgumentException(
            "study " + i + ": effect " + effects[i] + ", variance " + variances[i]);
      }
    }
    return new EffectSample(effects.clone(), variances.clone());
  }

  /** Number of studies, k. */
  public int size() {
    return effects.length;
  }

  /** Effect of the study at a place from 0. */
  public double effect(int study) {
    return effects[study];
  }

  /** Variance of the effect of the study at a place from 0. */
  public double variance(int study) {
    return variances[study];
  }

  /** Place of the study with the smallest variance; 0 without studies. */
  public int mostExact() {
    return mostExact;
  }

  /** Whether a variance is 0, or so near that its reciprocal is infinite. */
  public boolean hasZeroVariance() {
    for (double variance : variances) {
      if (variance < Double.MIN_NORMAL) {
        return true;
      }
    }
    return false;
  }

  /**
   * Whether the powers that pooling needs can be told as doubles: the fourth of the distances
   * between effects and of the variances, the square of both over the smallest variance.
   */
  public boolean isWithinArithmetic() {
    double smallest = Double.POSITIVE_INFINITY;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < size(); i++) {
      smallest = Math.min(smallest, variances[i]);
      low = Math.min(low, effects[i]);
      high = Math.max(high, effects[i]);
    }
    double farthest = Math.max(Math.abs(low), Math.abs(high));
    double reach = Math.max(Math.max(high - low, farthest), largestVariance());
    double relative = Math.max(reach, 1) / Math.min(smallest, 1);
    return Double.isFinite(Math.pow(reach, 4) * size())
        && Double.isFinite(relative * relative * size());
  }

  /** The studies at some places, in the order of the list. */
  public EffectSample at(List<Integer> places) {
    return new EffectSample(
        places.stream().mapToDouble(i -> effects[i]).toArray(),
        places.stream().mapToDouble(i -> variances[i]).toArray());
  }

  /** All studies but one. */
  public EffectSample without(int omitted) {
    return new EffectSample(without(effects, omitted), without(variances, omitted));
  }

  /** The same studies with effects measured from a centre. */
  EffectSample from(double centre) {
    double[] shifted = new double[effects.length];
    Arrays.setAll(shifted, i -> effects[i] - centre);
    return new EffectSample(shifted, variances);
  }

  private static double[] without(double[] all, int omitted) {
    double[] rest = new double[all.length - 1];
    System.arraycopy(all, 0, rest, 0, omitted);
    System.arraycopy(all, omitted + 1, rest, omitted, rest.length - omitted);
    return rest;
  }

  /** The weights 1/(variance + tauSquared). */
  public double[] weights(double tauSquared) {
    double[] weights = new double[size()];
    for (int i = 0; i < weights.length; i++) {
      weights[i] = 1 / (variances[i] + tauSquared);
    }
    return weights;
  }

  /** Sum over studies in their order. */
  public double sum(IntToDoubleFunction term) {
    return TermSum.of(size(), term);
  }

  /** The largest variance within a study. */
  public double largestVariance() {
    double largest = 0;
    for (double variance : variances) {
      largest = Math.max(largest, variance);
    }
    return largest;
  }
}
