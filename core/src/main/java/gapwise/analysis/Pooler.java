package gapwise.analysis;

import gapwise.effect.StudyData;
import gapwise.synthesis.pooling.CountPooling;
import gapwise.synthesis.pooling.EffectSample;
import gapwise.synthesis.pooling.InverseVariance;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Subgroups;
import java.util.List;
import java.util.stream.IntStream;

/** Pools any part of the studies in the way the plan says. */
interface Pooler {
  /** Number of studies that can be pooled. */
  int size();

  /** Pools the studies at some places. */
  Pooled at(List<Integer> places);

  /** Pools each group of studies and compares them. */
  Subgroups subgroups(List<String> levels, boolean common);

  /** Pools all. */
  default Pooled all() {
    return at(IntStream.range(0, size()).boxed().toList());
  }

  /** The way of a plan. */
  static <D extends StudyData> Pooler of(SynthesisPlan plan, Studies<D> studies) {
    if (ExactModels.asked(plan.json())) {
      return new LikelihoodPooler(
          ExactModels.of(plan.json()), studies.pooledData(), ExactModels.limits(plan.json()));
    }
    if (plan.json().path("model").asText().equals("three-level")) {
      return ClusterPooler.of(plan, studies);
    }
    return plan.counts().isPresent()
        ? new OfCounts(studies.pooledData(), plan.counts().get(), plan.settings().level())
        : plan.json().path("model").asText().equals("bayesian")
            ? new OfPosteriors(
                studies.sample(), PriorReader.read(plan.json().path("prior")), plan.settings())
            : new OfEffects(studies.sample(), plan.settings());
  }

  /** By the variance of effects. */
  record OfEffects(EffectSample sample, PoolingSettings settings) implements Pooler {
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

  /** From counts. */
  record OfCounts(List<? extends StudyData> studies, CountPooling counts, double level)
      implements Pooler {
    @Override
    public int size() {
      return studies.size();
    }

    @Override
    public Pooled at(List<Integer> places) {
      return counts.pool(places.stream().map(studies::get).toList(), level);
    }

    @Override
    public Subgroups subgroups(List<String> levels, boolean common) {
      return Subgroups.apart(levels, this::at);
    }
  }
}
