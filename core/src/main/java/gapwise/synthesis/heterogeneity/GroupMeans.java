package gapwise.synthesis.heterogeneity;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One mean for each group of studies; one group is the ordinary model. Sums are taken about the
 * effect of the heaviest study and the weights of the others without subtraction, so that one study
 * with nearly all the weight costs no digits.
 */
public final class GroupMeans implements MeanModel {
  private final int[] groups;
  private final int count;

  private GroupMeans(int[] groups, int count) {
    this.groups = groups;
    this.count = count;
  }

  /** One mean for all studies of a sample. */
  public static GroupMeans one(EffectSample sample) {
    return new GroupMeans(new int[sample.size()], 1);
  }

  /**
   * A mean for each group.
   *
   * @param groups the group of each study, from 0 without gaps
   */
  public static GroupMeans of(List<Integer> groups) {
    int[] of = groups.stream().mapToInt(Integer::intValue).toArray();
    int count = 0;
    for (int group : of) {
      count = Math.max(count, group + 1);
    }
    return new GroupMeans(of, count);
  }

  @Override
  public int parameters() {
    return count;
  }

  @Override
  public GroupFit fit(EffectSample sample, double[] weights) {
    return new GroupFit(sample, weights);
  }

  @Override
  public double squares(EffectSample sample, double tauSquared) {
    return count == 1
        ? OneMeanSums.squares(sample, tauSquared)
        : MeanModel.super.squares(sample, tauSquared);
  }

  @Override
  public double likelihoodSlope(EffectSample sample, double tauSquared, boolean restricted) {
    return count == 1
        ? OneMeanSums.likelihoodSlope(sample, tauSquared, restricted)
        : MeanModel.super.likelihoodSlope(sample, tauSquared, restricted);
  }

  @Override
  public OptionalDouble onlyTop(EffectSample sample, boolean restricted) {
    return count == 1 ? OneHump.of(sample, restricted) : OptionalDouble.empty();
  }

  /** The fit, with the mean of each group and its variance. */
  public final class GroupFit implements Fit {
    private final double[] weightSums = new double[count];
    private final double[] means = new double[count];
    private final double[] residuals;
    private final double[] projections;

    private GroupFit(EffectSample sample, double[] weights) {
      int k = sample.size();
      residuals = new double[k];
      projections = new double[k];
      int[] heaviest = new int[count];
      Arrays.fill(heaviest, -1);
      double[] othersBefore = new double[k];
      for (int i = 0; i < k; i++) {
        int g = groups[i];
        othersBefore[i] = weightSums[g];
        weightSums[g] += weights[i];
        if (heaviest[g] < 0 || weights[i] > weights[heaviest[g]]) {
          heaviest[g] = i;
        }
      }
      double[] shifts = new double[count];
      double[] after = new double[count];
      for (int i = k - 1; i >= 0; i--) {
        int g = groups[i];
        shifts[g] += weights[i] * (sample.effect(i) - sample.effect(heaviest[g]));
        projections[i] = weights[i] * ((othersBefore[i] + after[g]) / weightSums[g]);
        after[g] += weights[i];
      }
      for (int g = 0; g < count; g++) {
        shifts[g] /= weightSums[g];
        means[g] = sample.effect(heaviest[g]) + shifts[g];
      }
      for (int i = 0; i < k; i++) {
        int g = groups[i];
        residuals[i] = sample.effect(i) - sample.effect(heaviest[g]) - shifts[g];
      }
    }

    /** Weighted mean of a group. */
    public double mean(int group) {
      return means[group];
    }

    /** Sum of the weights of a group, the reciprocal of the variance of its mean. */
    public double weightSum(int group) {
      return weightSums[group];
    }

    @Override
    public double residual(int study) {
      return residuals[study];
    }

    @Override
    public double projection(int study) {
      return projections[study];
    }

    @Override
    public double logDeterminant() {
      double sum = 0;
      for (double weightSum : weightSums) {
        sum += Math.log(weightSum);
      }
      return sum;
    }
  }
}
