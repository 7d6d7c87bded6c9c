package gapwise.analysis.pooling;

import gapwise.effect.Interval;
import gapwise.effect.StudyData;
import gapwise.numeric.ReferenceDistribution;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.LikelihoodLimits;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Predictive;
import gapwise.synthesis.pooling.Subgroups;
import java.util.List;
import java.util.Optional;

/**
 * Counts by their own likelihood, with true values normal on the analysis scale; groups each have
 * their own variance between studies.
 */
public record ExactModel(
    ExactLikelihood likelihood, LikelihoodLimits limits, PoolingSettings settings)
    implements Model {
  static final String WORD = "exact-likelihood";

  @Override
  public String word() {
    return WORD;
  }

  @Override
  public boolean hasSpread() {
    return true;
  }

  @Override
  public Deletion deletion() {
    return Deletion.FIT;
  }

  @Override
  public <D extends StudyData> Pooler pooler(Studies<D> studies) {
    return new OfLikelihood(likelihood, studies.pooledData(), limits);
  }

  private record OfLikelihood(
      ExactLikelihood likelihood, List<? extends StudyData> studies, LikelihoodLimits limits)
      implements Pooler {
    @Override
    public int size() {
      return studies.size();
    }

    @Override
    public Pooled at(List<Integer> places) {
      return likelihood.pool(places.stream().map(studies::get).toList(), limits);
    }

    /** A further study takes many fits of its own where the spread is not known. */
    @Override
    public Pooled withoutFurther(List<Integer> places) {
      return likelihood.pool(
          places.stream().map(studies::get).toList(), limits.withoutPrediction());
    }

    /** The distribution from which the prediction interval is cut. */
    @Override
    public Optional<Further> further(List<Integer> places, Pooled pooled) {
      if (limits.prediction().filter(one -> !one.takesSpreadAsKnown()).isPresent()) {
        return likelihood
            .further(places.stream().map(studies::get).toList())
            .map(one -> one::below);
      }
      Optional<ReferenceDistribution> about =
          limits.prediction().flatMap(one -> one.distribution(places.size() - 1));
      if (pooled.prediction().isEmpty() || about.isEmpty()) {
        return Optional.empty();
      }
      Interval interval = pooled.prediction().get();
      Predictive further =
          new Predictive(
              (interval.lower() + interval.upper()) / 2,
              (interval.upper() - interval.lower()) / 2 / about.get().multiplier(limits.level()),
              about.get());
      return Optional.of(further::below);
    }

    @Override
    public Subgroups subgroups(List<String> levels, boolean common) {
      return Subgroups.apart(levels, this::at, true);
    }
  }
}
