package gapwise.analysis;

import gapwise.effect.StudyData;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.LikelihoodLimits;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.Subgroups;
import java.util.List;

/** Pools counts by their own likelihood; groups each have their own variance between studies. */
record LikelihoodPooler(
    ExactLikelihood model, List<? extends StudyData> studies, LikelihoodLimits limits)
    implements Pooler {
  @Override
  public int size() {
    return studies.size();
  }

  @Override
  public Pooled at(List<Integer> places) {
    return model.pool(places.stream().map(studies::get).toList(), limits);
  }

  @Override
  public Subgroups subgroups(List<String> levels, boolean common) {
    return Subgroups.apart(levels, this::at, true);
  }
}
