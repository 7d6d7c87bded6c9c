package gapwise.synthesis.network;

import gapwise.effect.Interval;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.network.NetworkMeans.NetworkFit;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How far studies of the network differ beyond chance, differences between designs included.
 *
 * @param q total, under a common effect
 * @param tauSquared between studies; empty for a common effect or without degrees of freedom
 * @param interval for it
 * @param typicalVariance within studies: degrees of freedom over tr P at weights 1/v
 */
public record NetworkHeterogeneity(
    ChiSquaredTest q,
    Optional<TauSquared.Estimate> tauSquared,
    Optional<Interval> interval,
    OptionalDouble typicalVariance) {
  /** Of rows about their means. */
  static NetworkHeterogeneity of(
      EffectSample sample, NetworkMeans model, NetworkSettings settings) {
    NetworkFit common = model.fitAt(sample, 0);
    int degrees = sample.size() - model.parameters();
    ChiSquaredTest q = new ChiSquaredTest(degrees == 0 ? 0 : common.q(), degrees);
    if (degrees == 0 || settings.estimator().isEmpty()) {
      return new NetworkHeterogeneity(
          q, Optional.empty(), Optional.empty(), OptionalDouble.empty());
    }
    TauSquared tauSquared = settings.estimator().get().estimate(sample, model);
    double trace = 0;
    for (int i = 0; i < sample.size(); i++) {
      trace += common.projection(i);
    }
    return new NetworkHeterogeneity(
        q,
        tauSquared instanceof TauSquared.Estimate estimate
            ? Optional.of(estimate)
            : Optional.empty(),
        Optional.of(settings.interval().of(sample, model, settings.level())),
        OptionalDouble.of(degrees / trace));
  }

  /** Share of Q beyond its degrees of freedom, 0 to 1; empty without any. */
  public OptionalDouble iSquaredFromQ() {
    return q.degreesOfFreedom() < 1
        ? OptionalDouble.empty()
        : OptionalDouble.of(q.q() == 0 ? 0 : Math.max(0, 1 - q.degreesOfFreedom() / q.q()));
  }

  /** Q over its degrees of freedom; empty without any. */
  public OptionalDouble hSquaredFromQ() {
    return q.degreesOfFreedom() < 1
        ? OptionalDouble.empty()
        : OptionalDouble.of(q.q() / q.degreesOfFreedom());
  }

  /** Tau squared over itself and the typical variance, 0 to 1. */
  public OptionalDouble iSquared() {
    return tauSquared.isEmpty() || typicalVariance.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            tauSquared.get().value() / (tauSquared.get().value() + typicalVariance.getAsDouble()));
  }

  /** 1 and tau squared over the typical variance. */
  public OptionalDouble hSquared() {
    return tauSquared.isEmpty() || typicalVariance.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(1 + tauSquared.get().value() / typicalVariance.getAsDouble());
  }
}
