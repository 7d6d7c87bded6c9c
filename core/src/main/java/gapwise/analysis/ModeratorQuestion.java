package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.effect.BackTransform;
import gapwise.effect.StudyData;
import gapwise.synthesis.pooling.EffectSample;
import gapwise.synthesis.regression.Regression;
import gapwise.synthesis.regression.RegressionSettings;
import gapwise.synthesis.regression.RegressionTest;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * What a plan with moderators asks of the studies.
 *
 * @param synthesis the whole
 * @param design what the moderators make of the studies
 * @param sample the effects of the studies that enter
 * @param settings how they are fitted
 */
record ModeratorQuestion<D extends StudyData>(
    Synthesis<D> synthesis,
    ModeratorDesign design,
    EffectSample sample,
    RegressionSettings settings) {
  private static final Set<String> MODELS = Set.of("random-effects", "common-effect");

  /** Whether a plan has moderators and a model of independent studies. */
  static boolean asked(SynthesisPlan plan) {
    ObjectNode json = plan.json();
    return json.has("moderators") && MODELS.contains(json.path("model").asText());
  }

  static <D extends StudyData> ModeratorQuestion<D> of(
      Synthesis<D> synthesis, List<Result.Warning> warnings) {
    ModeratorDesign design =
        ModeratorDesign.of(
            synthesis.plan().json().get("moderators"),
            synthesis.table(),
            synthesis.studies().pooled(),
            warnings);
    return new ModeratorQuestion<>(
        synthesis,
        design,
        synthesis.studies().sample().at(design.places()),
        settings(synthesis.plan()));
  }

  /** How the coefficients of a plan are fitted and tested. */
  static RegressionSettings settings(SynthesisPlan plan) {
    boolean common = plan.settings().estimator().isEmpty();
    String word = plan.json().path("moderatorTest").asText("hartung-knapp");
    return new RegressionSettings(
        plan.settings(),
        common
            ? RegressionTest.NORMAL
            : RegressionTest.valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_')));
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
    return Regression.of(sample, design.design(), settings);
  }
}
