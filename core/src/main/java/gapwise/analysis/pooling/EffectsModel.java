package gapwise.analysis.pooling;

import gapwise.effect.StudyData;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.pooling.InverseVariance;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Subgroups;
import java.util.List;

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
    public Subgroups subgroups(List<String> levels, boolean common) {
      return common
          ? Subgroups.common(sample, levels, settings)
          : Subgroups.separate(sample, levels, settings);
    }
  }
}
