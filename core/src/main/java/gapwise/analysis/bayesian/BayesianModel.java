package gapwise.analysis.bayesian;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.pooling.MeanOfTrueValues;
import gapwise.analysis.pooling.Pooler;
import gapwise.analysis.pooling.Studies;
import gapwise.effect.StudyData;
import gapwise.synthesis.bayes.MeanPrior;
import gapwise.synthesis.pooling.PoolingSettings;

/**
 * Bayesian random effects.
 *
 * @param mean the prior of the mean
 * @param tau the prior of tau as the plan has it
 * @param ofLogarithms whether effects are logarithms of means or rates, whose average over studies
 *     is another than their median
 */
public record BayesianModel(
    MeanPrior mean, AskedPrior tau, boolean ofLogarithms, PoolingSettings settings)
    implements PosteriorModel {

  static BayesianModel of(JsonNode full, PoolingSettings settings) {
    String scale = full.path("scale").asText();
    return new BayesianModel(
        PriorReader.mean(full.path("prior").path("mean")),
        AskedPrior.of(full.path("prior").path("tau")),
        scale.equals("log")
            && MeanOfTrueValues.of(full.path("measure").asText(), scale).isPresent(),
        settings);
  }

  @Override
  public <D extends StudyData> Pooler pooler(Studies<D> studies) {
    return new OfPosteriors(this, studies.sample(), studies.pooledData());
  }
}
