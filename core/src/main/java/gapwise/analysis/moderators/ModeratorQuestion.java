package gapwise.analysis.moderators;

import gapwise.analysis.pooling.Studies;
import gapwise.analysis.pooling.Synthesis;
import gapwise.analysis.result.Result;
import gapwise.effect.BackTransform;
import gapwise.effect.StudyData;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.regression.Regression;
import gapwise.synthesis.regression.RegressionSettings;
import java.util.List;

/**
 * What a plan with moderators asks of the studies.
 *
 * @param synthesis the whole
 * @param asked by the plan
 * @param design what the moderators make of the studies
 * @param sample the effects of the studies that enter
 */
public record ModeratorQuestion<D extends StudyData>(
    Synthesis<D> synthesis, AskedRegression asked, ModeratorDesign design, EffectSample sample) {

  /** Holds what is asked against the data; a warning tells of each study with a blank. */
  public static <D extends StudyData> ModeratorQuestion<D> of(
      Synthesis<D> synthesis, AskedRegression asked, List<Result.Warning> warnings) {
    ModeratorDesign design =
        ModeratorDesign.of(
            asked.moderators(), synthesis.table(), synthesis.studies().pooled(), warnings);
    ModeratorCautions.add(design.design(), warnings);
    return new ModeratorQuestion<>(
        synthesis, asked, design, synthesis.studies().sample().at(design.places()));
  }

  /** How they are fitted. */
  RegressionSettings settings() {
    return asked.settings(synthesis.plan().model().settings());
  }

  /** The studies that enter. */
  List<Studies.Entry<D>> entries() {
    List<Studies.Entry<D>> pooled = synthesis.studies().pooled();
    return design.places().stream().map(pooled::get).toList();
  }

  /** How values of the moderators lie in these studies. */
  ModeratorValues values() {
    return new ModeratorValues(
        design.moderators(), entries().stream().map(Studies.Entry::row).toList());
  }

  /** From the analysis scale to what people read. */
  BackTransform back() {
    return synthesis
        .measure()
        .shown(entries().stream().map(entry -> entry.data().orElseThrow()).toList());
  }

  Regression fit() {
    return Regression.of(sample, design.design(), settings());
  }
}
