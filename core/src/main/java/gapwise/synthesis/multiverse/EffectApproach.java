package gapwise.synthesis.multiverse;

import gapwise.budget.Work;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.GroupMeans;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.heterogeneity.TauSquaredEstimator;
import gapwise.synthesis.pooling.InverseVariance;
import gapwise.synthesis.pooling.MeanInterval;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.WeightedMean;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Effects pooled by their variances. The effects of a subset are taken once for all ways, tau
 * squared is estimated once for all intervals, and limits that do not hang on tau squared are
 * worked out once.
 *
 * @param scale its word
 * @param pooled one way of pooling each
 * @param effects the effects of the rows at some places
 */
public record EffectApproach(String scale, List<Way> pooled, Function<List<Integer>, Body> effects)
    implements Approach {
  public EffectApproach {
    pooled = List.copyOf(pooled);
  }

  /**
   * A way of pooling.
   *
   * @param settings the levels of all choices but the rows
   * @param how as a plan says it
   */
  public record Way(Settings settings, PoolingSettings how) {}

  @Override
  public List<Settings> ways() {
    return pooled.stream().map(Way::settings).toList();
  }

  @Override
  public List<AnalysisFinding> findings(Subset subset) {
    Body body = effects.apply(subset.rows());
    Optional<String> obstacle =
        body.sample().size() == 0
            ? Optional.of(body.ifEmpty())
            : InverseVariance.obstacle(body.sample()).map(Problem::code);
    Shared shared = new Shared(body.sample());
    List<AnalysisFinding> findings = new ArrayList<>(pooled.size());
    for (Way way : pooled) {
      Work.check();
      findings.add(
          obstacle.isPresent()
              ? new AnalysisFinding.NotEstimated(obstacle.get())
              : finding(shared, body, way.how()));
    }
    return findings;
  }

  private static AnalysisFinding finding(Shared shared, Body body, PoolingSettings how) {
    if (body.sample().size() == 1) {
      PooledMean alone = InverseVariance.pool(body.sample(), how).mean().orElseThrow();
      return estimated(alone, body);
    }
    Fitted fitted = shared.fitted(how.estimator());
    return fitted.mean().isEmpty()
        ? new AnalysisFinding.NotEstimated(fitted.code())
        : estimated(shared.limits(fitted.mean().get(), how.interval(), how.level()), body);
  }

  private static AnalysisFinding estimated(PooledMean mean, Body body) {
    return AnalysisFinding.of(mean, body.back(), body.sample().size());
  }

  /** The mean under an estimator, or the code that says why there is none. */
  private record Fitted(Optional<WeightedMean> mean, String code) {}

  /** What ways of pooling the same effects have in common. */
  private static final class Shared {
    private final EffectSample sample;
    private final Map<String, Fitted> byEstimator = new HashMap<>();
    private final Map<String, PooledMean> byInterval = new HashMap<>();

    Shared(EffectSample sample) {
      this.sample = sample;
    }

    Fitted fitted(Optional<TauSquaredEstimator> estimator) {
      return byEstimator.computeIfAbsent(
          estimator.map(TauSquaredEstimator::name).orElse(""), name -> fit(estimator));
    }

    private Fitted fit(Optional<TauSquaredEstimator> estimator) {
      if (estimator.isEmpty()) {
        return new Fitted(Optional.of(WeightedMean.of(sample, 0)), "");
      }
      TauSquared tauSquared = estimator.get().estimate(sample, GroupMeans.one(sample));
      return tauSquared instanceof TauSquared.Estimate value
          ? new Fitted(Optional.of(WeightedMean.of(sample, value.value())), "")
          : new Fitted(Optional.empty(), ((TauSquared.NotEstimable) tauSquared).code());
    }

    PooledMean limits(WeightedMean mean, MeanInterval interval, double level) {
      return interval.ignoresTauSquared()
          ? byInterval.computeIfAbsent(interval.name(), name -> interval.around(mean, level))
          : interval.around(mean, level);
    }
  }
}
