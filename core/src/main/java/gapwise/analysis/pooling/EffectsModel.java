package gapwise.analysis.pooling;

import gapwise.effect.StudyData;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.pooling.InverseVariance;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Subgroups;
import gapwise.synthesis.pooling.UnknownTau;
import gapwise.synthesis.pooling.WeightedMean;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** By the variance of effects: random effects where tau squared is estimated, else a common one. */
public record EffectsModel(PoolingSettings settings) implements Model {
  @Override
  public String word() {
    return hasSpread() ? "random-effects" : "common-effect";
  }

  @Override
  public boolean hasSpread() {
    return settings.estimator().isPresent();
  }

  @Override
  public Deletion deletion() {
    return Deletion.DIAGNOSTICS;
  }

  @Override
  public <D extends StudyData> Pooler pooler(Studies<D> studies) {
    return new OfEffects(studies.sample(), settings);
  }

  private record OfEffects(EffectSample sample, PoolingSettings settings) implements Pooler {
    @Override
    public int size() {
      return sample.size();
    }

    @Override
    public Pooled at(List<Integer> places) {
      return InverseVariance.pool(sample.at(places), settings);
    }

    @Override
    public Optional<Further> further(List<Integer> places, Pooled pooled) {
      OptionalDouble tauSquared = pooled.heterogeneity().tauSquared();
      if (places.size() < 2 || pooled.mean().isEmpty() || tauSquared.isEmpty()) {
        return Optional.empty();
      }
      EffectSample some = sample.at(places);
      if (!settings.prediction().reference().takesSpreadAsKnown()) {
        return UnknownTau.ofOneMean(some, tauSquared.getAsDouble()).map(one -> one::below);
      }
      WeightedMean mean =
          WeightedMean.of(
              some, settings.interval().weightingTauSquared(some, tauSquared.getAsDouble()));
      return settings
          .prediction()
          .distribution(mean, tauSquared.getAsDouble())
          .map(one -> one::below);
    }

    @Override
    public Subgroups subgroups(List<String> levels, boolean common) {
      return common
          ? Subgroups.common(sample, levels, settings)
          : Subgroups.separate(sample, levels, settings);
    }
  }
}
