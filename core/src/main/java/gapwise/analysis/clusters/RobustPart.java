package gapwise.analysis.clusters;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.moderators.AskedRegression;
import gapwise.analysis.moderators.ModeratorDesign;
import gapwise.analysis.moderators.ModeratorQuestion;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.pooling.Studies;
import gapwise.analysis.pooling.Synthesis;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.regression.ClusteredFit;
import gapwise.synthesis.regression.DesignMatrix;
import gapwise.synthesis.regression.Regression;
import gapwise.synthesis.regression.RegressionSettings;
import gapwise.synthesis.regression.RegressionTest;
import gapwise.synthesis.regression.RobustVariance;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Standard errors that allow for clusters, for models whose weights take studies as independent.
 * Studies without a cluster are left out and the model is fitted to the others.
 *
 * @param cluster column that names it
 * @param correction for few clusters
 * @param test of the coefficients of the model
 */
public record RobustPart(
    String cluster, RobustVariance.Correction correction, RegressionTest test) {

  /** Models whose weights take rows as independent, so that clusters are named for this alone. */
  private static final Set<String> WITHOUT_CLUSTERS = Set.of("random-effects", "common-effect");

  /** Fills in the kind where a plan names clusters and its model has no other use for them. */
  public static void fill(Filling plan) {
    boolean needed =
        WITHOUT_CLUSTERS.contains(plan.text("model"))
            && plan.full().path("pooling").asText("inverse-variance").equals("inverse-variance");
    if (plan.given().has("cluster") && needed) {
      plan.text("robustVariance", "cr2");
    }
  }

  /** What a checked plan asks; empty if it asks for none. */
  public static Optional<RobustPart> of(ObjectNode full, PoolingSettings settings) {
    return full.has("robustVariance")
        ? Optional.of(
            new RobustPart(
                full.get("cluster").asText(),
                RobustVariance.Correction.valueOf(
                    full.get("robustVariance").asText().toUpperCase(Locale.ROOT)),
                AskedRegression.test(full, settings)))
        : Optional.empty();
  }

  /**
   * Works it out; empty where it cannot be told.
   *
   * @param moderators the regression whose errors are told; empty for those of one mean
   * @param warnings takes what a reader must know
   * @throws WrongInputException if the data have no such column
   */
  public <D extends StudyData> Optional<RobustResult> of(
      Synthesis<D> synthesis, Optional<AskedRegression> moderators, List<Result.Warning> warnings) {
    checkColumn(synthesis.table());
    DesignMatrix design = DesignMatrix.ofOneMean(synthesis.pooler().size());
    List<Integer> places = new ArrayList<>();
    if (moderators.isPresent()) {
      // Its warnings stand already with the regression.
      ModeratorDesign asked =
          ModeratorQuestion.of(synthesis, moderators.get(), new ArrayList<>()).design();
      design = asked.design();
      places.addAll(asked.places());
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
      String own = entry.row().text(cluster);
      if (own.isEmpty()) {
        warnings.add(blank(entry));
      } else {
        rows.add(i);
        kept.add(places.get(i));
        clusters.add(own);
      }
    }
    EffectSample sample = synthesis.studies().sample().at(kept);
    RegressionSettings settings = new RegressionSettings(synthesis.plan().model().settings(), test);
    Regression regression = Regression.of(sample, design.at(rows), settings);
    if (regression.fit().isEmpty()) {
      // Why stands already with the summary or the regression, unless clusters made it so.
      if (rows.size() < places.size()) {
        regression.warnings().forEach(one -> warnings.add(Result.Warning.of(one)));
      }
      return Optional.empty();
    }
    RobustVariance robust =
        RobustVariance.of(
            ClusteredFit.of(regression.fit().get(), clusters),
            correction,
            settings.pooling().level());
    return told(robust, warnings);
  }

  /** The errors with their warnings; empty where there are none. */
  static Optional<RobustResult> told(RobustVariance robust, List<Result.Warning> warnings) {
    robust.warnings().forEach(one -> warnings.add(Result.Warning.of(one)));
    return robust.coefficients().isEmpty()
        ? Optional.empty()
        : Optional.of(RobustResult.of(robust));
  }

  private void checkColumn(DataTable table) {
    if (!table.columns().contains(cluster)) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  "cluster",
                  "unknown-column",
                  "there is no column '" + cluster + "'; the data have " + table.columns())));
    }
  }

  private <D extends StudyData> Result.Warning blank(Studies.Entry<D> entry) {
    return entry
        .row()
        .warning(
            "missing-value",
            say(
                "analysis.not-in-the-robust-variance",
                Map.of("row", entry.row().place(), "column", cluster)),
            entry.label());
  }
}
