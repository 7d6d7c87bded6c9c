package gapwise.analysis.bayesian;

import gapwise.analysis.pooling.Pooler;
import gapwise.analysis.pooling.Studies;
import gapwise.effect.StudyData;
import gapwise.synthesis.bayes.Priors;
import gapwise.synthesis.pooling.PoolingSettings;

/**
 * Bayesian random effects.
 *
 * @param tau the prior of tau as the plan has it, to be told
 */
public record BayesianModel(Priors priors, AskedPrior tau, PoolingSettings settings)
    implements PosteriorModel {
  @Override
  public <D extends StudyData> Pooler pooler(Studies<D> studies) {
    return new OfPosteriors(studies.sample(), priors, settings);
  }
}
