package gapwise.analysis.pooling;

import gapwise.effect.StudyData;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.LikelihoodLimits;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Subgroups;
import java.util.List;

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

    @Override
    public Subgroups subgroups(List<String> levels, boolean common) {
      return Subgroups.apart(levels, this::at, true);
    }
  }
}
