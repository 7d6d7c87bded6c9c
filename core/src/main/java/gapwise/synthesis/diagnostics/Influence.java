package gapwise.synthesis.diagnostics;

import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.pooling.InverseVariance;
import gapwise.synthesis.pooling.LeaveOneOut;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PooledValue;
import gapwise.synthesis.pooling.PoolingSettings;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What changes when a study is left out, with everything estimated anew: Viechtbauer and Cheung,
 * Res Synth Methods 2010;1:112; contributions as in Baujat et al., Stat Med 2002;21:2641. Time
 * grows with the number of studies, see {@link LeaveOneOut}.
 *
 * @param withoutEach pooled without the study at each place
 * @param diagnostics one for each study; empty if the mean cannot be estimated with all of them
 * @param contributions one for each study, by common effect
 */
public record Influence(
    List<PooledValue> withoutEach, List<Diagnostic> diagnostics, List<Contribution> contributions) {

  /**
   * Deletion diagnostics, with m and t for all studies, m_i and t_i without study i.
   *
   * @param studentisedResidual (y - m_i)/root(v + t_i + var m_i)
   * @param standardisedChange (m - m_i)/root(leverage (t_i + v))
   * @param cooksDistance (m - m_i)^2/var m
   * @param covarianceRatio var m_i/var m
   * @param leverage the study's share of the weight
   */
  public record Diagnostic(
      double studentisedResidual,
      double standardisedChange,
      double cooksDistance,
      double covarianceRatio,
      double leverage) {}

  /**
   * What a study adds.
   *
   * @param toQ (y - m)^2/v
   * @param toEstimate (m - m_i)^2/var m_i
   */
  public record Contribution(double toQ, double toEstimate) {}

  public Influence {
    withoutEach = List.copyOf(withoutEach);
    diagnostics = List.copyOf(diagnostics);
    contributions = List.copyOf(contributions);
  }

  /**
   * Leaves out each study in turn.
   *
   * @param sample at least two studies
   */
  public static Influence of(EffectSample sample, PoolingSettings settings) {
    if (sample.size() < 2) {
      throw new IllegalArgumentException("no study would remain of " + sample.size());
    }
    PoolingSettings common = settings.withCommonEffect();
    Pooled all = InverseVariance.pool(sample, settings);
    Pooled allCommon = InverseVariance.pool(sample, common);
    List<PooledValue> without = LeaveOneOut.of(sample, settings);
    List<PooledValue> withoutCommon =
        settings.equals(common) ? without : LeaveOneOut.of(sample, common);
    List<Diagnostic> diagnostics = new ArrayList<>();
    List<Contribution> contributions = new ArrayList<>();
    for (int i = 0; i < sample.size(); i++) {
      diagnostic(sample, i, all, without.get(i)).ifPresent(diagnostics::add);
      contribution(sample, i, allCommon, withoutCommon.get(i)).ifPresent(contributions::add);
    }
    return new Influence(
        without,
        diagnostics.size() == sample.size() ? diagnostics : List.of(),
        contributions.size() == sample.size() ? contributions : List.of());
  }

  private static Optional<Diagnostic> diagnostic(
      EffectSample sample, int i, Pooled all, PooledValue without) {
    if (all.mean().isEmpty() || without.mean().isEmpty()) {
      return Optional.empty();
    }
    double mean = all.mean().get().estimate();
    double meanWithout = without.mean().get().estimate();
    double variance = square(all.modelStandardError().orElseThrow());
    double varianceWithout = square(without.modelStandardError().orElseThrow());
    double total = sample.variance(i) + without.tauSquared().orElse(0);
    double leverage = all.weights().get(i);
    return Optional.of(
        new Diagnostic(
            (sample.effect(i) - meanWithout) / Math.sqrt(total + varianceWithout),
            (mean - meanWithout) / Math.sqrt(leverage * total),
            square(mean - meanWithout) / variance,
            varianceWithout / variance,
            leverage));
  }

  private static Optional<Contribution> contribution(
      EffectSample sample, int i, Pooled all, PooledValue without) {
    if (all.mean().isEmpty() || without.mean().isEmpty()) {
      return Optional.empty();
    }
    double mean = all.mean().get().estimate();
    return Optional.of(
        new Contribution(
            square(sample.effect(i) - mean) / sample.variance(i),
            square(mean - without.mean().get().estimate())
                / square(without.modelStandardError().orElseThrow())));
  }

  private static double square(double x) {
    return x * x;
  }
}
