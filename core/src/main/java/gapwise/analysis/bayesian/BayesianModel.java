package gapwise.analysis.bayesian;

import gapwise.analysis.pooling.Model;
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
    implements Model {
  @Override
  public String word() {
    return "bayesian";
  }

  /** Tau has a posterior and no estimate. */
  @Override
  public boolean hasSpread() {
    return false;
  }

  @Override
  public Deletion deletion() {
    return Deletion.POSTERIOR;
  }

  @Override
  public <D extends StudyData> Pooler pooler(Studies<D> studies) {
    return new OfPosteriors(studies.sample(), priors, settings);
  }
}
