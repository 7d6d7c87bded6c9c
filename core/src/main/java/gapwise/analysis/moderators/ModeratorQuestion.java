package gapwise.analysis.moderators;

import gapwise.analysis.pooling.Synthesis;
import gapwise.analysis.result.Result;
import gapwise.effect.StudyData;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.regression.Predicted;
import gapwise.synthesis.regression.Regression;
import gapwise.synthesis.regression.RegressionSettings;
import java.util.List;

/**
 * What a plan with moderators asks of the effects of its studies.
 *
 * @param studies with their moderators
 * @param sample the effects of the studies that enter
 */
public record ModeratorQuestion<D extends StudyData>(
    ModeratedStudies<D> studies, EffectSample sample) {

  /** Holds what is asked against the data; a warning tells of each study with a blank. */
  public static <D extends StudyData> ModeratorQuestion<D> of(
      Synthesis<D> synthesis, AskedRegression asked, List<Result.Warning> warnings) {
    ModeratedStudies<D> studies = ModeratedStudies.of(synthesis, asked, warnings);
    return new ModeratorQuestion<>(
        studies, synthesis.studies().sample().at(studies.design().places()));
  }

  /** What the moderators make of the studies. */
  public ModeratorDesign design() {
    return studies.design();
  }

  /** How they are fitted. */
  RegressionSettings settings() {
    return studies.asked().settings(studies.synthesis().plan().model().settings());
  }

  Regression fit() {
    return Regression.of(sample, design().design(), settings());
  }

  /** What a fit expects at given values. */
  FittedMean expected(Regression.Fit fit) {
    return new FittedMean(row -> Predicted.at(fit, sample, settings(), row), fit.tauSquared());
  }
}
