package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.pooling.EffectSample;
import gapwise.synthesis.regression.Design;
import gapwise.synthesis.regression.Regression;
import gapwise.synthesis.regression.RegressionSettings;
import gapwise.synthesis.regression.RobustVariance;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Standard errors that allow for clusters, for models whose weights take studies as independent.
 * Studies without a cluster are left out and the model is fitted to the others.
 */
final class RobustPart implements SynthesisPart {
  private static final Set<String> MODELS = Set.of("random-effects", "common-effect");

  @Override
  public boolean asked(SynthesisPlan plan) {
    ObjectNode json = plan.json();
    return json.has("robustVariance") && MODELS.contains(json.path("model").asText());
  }

  @Override
  public <D extends StudyData> void add(
      Synthesis<D> synthesis, ResultBuilder result, List<Result.Warning> warnings) {
    ObjectNode json = synthesis.plan().json();
    String column = json.get("cluster").asText();
    checkColumn(synthesis.table(), column);
    Design design = Design.ofOneMean(synthesis.pooler().size());
    List<Integer> places = new ArrayList<>();
    if (json.has("moderators")) {
      // Its warnings stand already with the regression.
      ModeratorDesign moderators = ModeratorQuestion.of(synthesis, new ArrayList<>()).design();
      design = moderators.design();
      places.addAll(moderators.places());
    } else {
      for (int i = 0; i < design.rows(); i++) {
        places.add(i);
      }
    }
    List<Integer> rows = new ArrayList<>();
    List<Integer> kept = new ArrayList<>();
    List<String> clusters = new ArrayList<>();
    List<Studies.Entry<D>> pooled = synthesis.studies().pooled();
    for (int i = 0; i < places.size(); i++) {
      Studies.Entry<D> entry = pooled.get(places.get(i));
      String cluster = entry.row().text(column);
      if (cluster.isEmpty()) {
        warnings.add(blank(entry, column));
      } else {
        rows.add(i);
        kept.add(places.get(i));
        clusters.add(cluster);
      }
    }
    EffectSample sample = synthesis.studies().sample().at(kept);
    RegressionSettings settings = ModeratorQuestion.settings(synthesis.plan());
    Regression regression = Regression.of(sample, design.at(rows), settings);
    if (regression.fit().isEmpty()) {
      // Why stands already with the summary or the regression, unless clusters made it so.
      if (rows.size() < places.size()) {
        warnings.addAll(StudyWarnings.of(regression.warnings()));
      }
      return;
    }
    RobustVariance robust =
        RobustVariance.of(
            regression.fit().get(),
            clusters,
            RobustVariance.Correction.valueOf(
                json.get("robustVariance").asText().toUpperCase(Locale.ROOT)),
            settings.pooling().level());
    warnings.addAll(StudyWarnings.of(robust.warnings()));
    if (!robust.coefficients().isEmpty()) {
      result.robust(RobustResult.of(robust));
    }
  }

  static void checkColumn(DataTable table, String column) {
    if (!table.columns().contains(column)) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  "cluster",
                  "unknown-column",
                  "there is no column '" + column + "'; the data have " + table.columns())));
    }
  }

  private static <D extends StudyData> Result.Warning blank(Studies.Entry<D> entry, String column) {
    return Result.Warning.of(
        "missing-value",
        entry.row().place()
            + " has no value in "
            + column
            + " and is left out of the robust variance",
        entry.label());
  }
}
