package gapwise.synthesis.network;

import gapwise.budget.Work;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.network.NetworkMeans.NetworkFit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Direct and indirect evidence for a pair that studies of more than two arms hold too. In each
 * study that holds both treatments the difference between them may be another than elsewhere by
 * delta, half of it moved to either treatment, so that neither is preferred (White, Stata J
 * 2015;15:951, the symmetrical side-splitting; Dias, Welton, Caldwell and Ades, Stat Med
 * 2010;29:932). The network is fitted with delta beside its comparisons: indirect is what it then
 * gives without delta, direct with it. Third arms of such studies tell of both, so the two are not
 * independent and the standard error of delta is its own. For pairs of two-arm studies alone this
 * is {@link Splitting}. The variance between studies stays that of the whole network.
 */
final class SideSplitting {
  /** Less than this share of delta's column left by the other comparisons is rounding. */
  private static final double NOTHING_LEFT = 1e-9;

  private final NetworkFrame frame;
  private final NetworkFit fit;
  private final double tauSquared;

  SideSplitting(NetworkFrame frame, NetworkFit fit, double tauSquared) {
    this.frame = frame;
    this.fit = fit;
    this.tauSquared = tauSquared;
  }

  /** The first treatment less the second; empty unless there are both kinds of evidence. */
  Optional<Split> of(int one, int other) {
    Work.check();
    List<NetworkStudy> moved = new ArrayList<>();
    for (NetworkStudy study : frame.studies()) {
      moved.add(moved(study, one, other));
    }
    // Whatever is known of the effects, delta's column turns with their covariance alone.
    return NetworkFrame.of(moved, frame.index()).flatMap(column -> split(column, one, other));
  }

  /** A study whose effects are what delta adds to them. */
  private NetworkStudy moved(NetworkStudy study, int one, int other) {
    List<Double> shares = new ArrayList<>();
    for (String treatment : study.treatments()) {
      int place = frame.index().of(treatment);
      shares.add(place == one ? 0.5 : place == other ? -0.5 : 0);
    }
    boolean both = shares.contains(0.5) && shares.contains(-0.5);
    List<Double> effects =
        shares.subList(1, shares.size()).stream()
            .map(share -> both ? share - shares.get(0) : 0)
            .toList();
    return new NetworkStudy(study.label(), study.treatments(), effects, study.covariance());
  }

  private Optional<Split> split(NetworkFrame column, int one, int other) {
    NetworkFit explained = column.fitAt(tauSquared);
    EffectSample sample = column.sample();
    double whole = 0;
    double left = 0;
    double moved = 0;
    for (int row = 0; row < sample.size(); row++) {
      double weight = 1 / (sample.variance(row) + tauSquared);
      whole += weight * sample.effect(row) * sample.effect(row);
      left += weight * explained.residual(row) * explained.residual(row);
      moved += weight * explained.residual(row) * fit.residual(row);
    }
    if (!(left > NOTHING_LEFT * whole)) {
      return Optional.empty();
    }
    SparseRow contrast = frame.contrast(one, other);
    double estimate = fit.estimate(contrast);
    double variance = fit.variance(contrast);
    double share = explained.estimate(contrast);
    double delta = moved / left;
    return Optional.of(
        new Split(
            new Comparison(
                estimate + (1 - share) * delta,
                Math.sqrt(variance + (1 - share) * (1 - share) / left)),
            new Comparison(estimate - share * delta, Math.sqrt(variance + share * share / left)),
            new Comparison(delta, 1 / Math.sqrt(left)),
            true));
  }
}
