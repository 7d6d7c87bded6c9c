package gapwise.analysis.pooling;

import gapwise.effect.ArmCounts;
import gapwise.effect.StudyData;
import gapwise.synthesis.likelihood.BetaBinomial;
import gapwise.synthesis.likelihood.FittedBeta;
import gapwise.synthesis.likelihood.LikelihoodLimits;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Subgroups;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Shares by their own likelihood, with true values that have a beta distribution; groups each have
 * their own.
 *
 * @param predicted whether an interval for a further study is asked for
 */
public record BetaBinomialModel(
    LikelihoodLimits limits, boolean predicted, PoolingSettings settings) implements Model {
  @Override
  public String word() {
    return ExactModel.WORD;
  }

  /** The spread is told by a correlation instead. */
  @Override
  public boolean hasSpread() {
    return false;
  }

  @Override
  public Deletion deletion() {
    return Deletion.FIT;
  }

  @Override
  public <D extends StudyData> Pooler pooler(Studies<D> studies) {
    return new OfShares(
        studies.pooledData().stream().map(ArmCounts.class::cast).toList(), limits, predicted);
  }

  private record OfShares(List<ArmCounts> studies, LikelihoodLimits limits, boolean predicted)
      implements Pooler {
    @Override
    public int size() {
      return studies.size();
    }

    @Override
    public Pooled at(List<Integer> places) {
      return BetaBinomial.pool(places.stream().map(studies::get).toList(), limits, predicted);
    }

    @Override
    public Optional<Further> further(List<Integer> places, Pooled pooled) {
      Optional<PooledMean> mean = pooled.mean();
      OptionalDouble correlation = pooled.heterogeneity().intraclassCorrelation();
      if (mean.isEmpty()
          || correlation.isEmpty()
          || places.size() < BetaBinomial.FEWEST_FOR_FURTHER) {
        return Optional.empty();
      }
      return Optional.of(new FittedBeta(mean.get().estimate(), correlation.getAsDouble())::below);
    }

    @Override
    public Subgroups subgroups(List<String> levels, boolean common) {
      return Subgroups.apart(levels, this::at, false);
    }
  }
}
