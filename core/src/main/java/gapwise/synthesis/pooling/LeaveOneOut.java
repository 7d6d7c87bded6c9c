package gapwise.synthesis.pooling;

import gapwise.budget.Work;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.GroupMeans;
import gapwise.synthesis.heterogeneity.MeanModel;
import gapwise.synthesis.heterogeneity.SumsWithout;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.heterogeneity.WholeSample;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Pools without each study in turn, tau squared estimated anew. Up to {@link #REFITTED} studies
 * each is a fit of its own. Above, sums without a study come from those of all ({@link
 * SumsWithout}), so that time grows with the number of studies and not with its square; results of
 * the two agree to nine digits or more. A study that holds nearly all of a sum is refitted whatever
 * the number of studies; there can be few of those.
 */
public final class LeaveOneOut {
  /** Up to here refits take no longer than the sums, and are exact to the last digits. */
  static final int REFITTED = 40;

  private LeaveOneOut() {}

  /**
   * Pools without the study at each place.
   *
   * @param sample at least two studies
   */
  public static List<PooledValue> of(EffectSample sample, PoolingSettings settings) {
    boolean refit =
        sample.size() <= REFITTED
            || sample.hasZeroVariance()
            || !sample.isWithinArithmetic()
            || settings.interval() instanceof ProfileLikelihoodInterval;
    return refit ? refitted(sample, settings) : fromSums(sample, settings);
  }

  /** Whether time grows with the square of the number of studies. */
  public static boolean isSlow(PoolingSettings settings) {
    return settings.interval() instanceof ProfileLikelihoodInterval;
  }

  static List<PooledValue> refitted(EffectSample sample, PoolingSettings settings) {
    List<PooledValue> without = new ArrayList<>();
    for (int i = 0; i < sample.size(); i++) {
      Work.check();
      without.add(refit(sample, i, settings));
    }
    return without;
  }

  private static PooledValue refit(EffectSample sample, int omitted, PoolingSettings settings) {
    return PooledValue.of(
        InverseVariance.pool(sample.without(omitted), settings), sample.size() - 1);
  }

  static List<PooledValue> fromSums(EffectSample sample, PoolingSettings settings) {
    WholeSample whole = WholeSample.of(sample);
    MeanModel model = GroupMeans.one(sample);
    List<PooledValue> without = new ArrayList<>();
    for (int i = 0; i < sample.size(); i++) {
      Work.check();
      SumsWithout sums = new SumsWithout(whole, i);
      PooledValue value = pool(sums, sample, model, whole.centre(), settings);
      without.add(sums.isExact() ? value : refit(sample, i, settings));
    }
    return without;
  }

  private static PooledValue pool(
      SumsWithout sums,
      EffectSample sample,
      MeanModel model,
      double centre,
      PoolingSettings settings) {
    OptionalDouble q = OptionalDouble.of(sums.squaresAt(0));
    OptionalDouble none = OptionalDouble.empty();
    double tauSquared = 0;
    if (settings.estimator().isPresent()) {
      TauSquared estimated = settings.estimator().get().estimate(sums);
      if (!(estimated instanceof TauSquared.Estimate estimate)) {
        return new PooledValue(sums.size(), Optional.empty(), none, none, q);
      }
      tauSquared = estimate.value();
    }
    SumsWithout.Rest rest = sums.at(tauSquared);
    int degrees = sums.size() - 1;
    WeightedMean mean =
        new WeightedMean(
            sample, model, centre + rest.mean(), rest.weights(), rest.squares() / degrees, degrees);
    return new PooledValue(
        sums.size(),
        Optional.of(settings.interval().around(mean, settings.level())),
        OptionalDouble.of(mean.standardError()),
        settings.estimator().isPresent() ? OptionalDouble.of(tauSquared) : none,
        q);
  }
}
