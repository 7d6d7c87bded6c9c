package gapwise.analysis.bayesian;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.pooling.ExactModels;
import gapwise.analysis.pooling.Pooler;
import gapwise.analysis.pooling.Studies;
import gapwise.effect.StudyData;
import gapwise.synthesis.bayes.CentrePrior;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.pooling.PoolingSettings;

/**
 * Bayesian random effects of counts by their exact likelihood.
 *
 * @param counts which they are, two groups given their margins
 * @param centre the prior of the middle study
 * @param tau the prior of tau as the plan has it, to be told
 */
public record BayesianCountsModel(
    ExactLikelihood.Model counts, CentrePrior centre, AskedPrior tau, PoolingSettings settings)
    implements PosteriorModel {

  static BayesianCountsModel of(JsonNode full, PoolingSettings settings) {
    return new BayesianCountsModel(
        ExactModels.given(full.get("measure").asText()),
        PriorReader.centre(full.path("measure").asText(), full.path("prior").path("mean")),
        AskedPrior.of(full.path("prior").path("tau")),
        settings);
  }

  @Override
  public <D extends StudyData> Pooler pooler(Studies<D> studies) {
    return new OfCounts(this, studies.pooledData());
  }
}
