package gapwise.analysis.synthesis;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.moderators.RegressionResult;
import gapwise.analysis.pooling.ExactModels;
import gapwise.analysis.result.Result;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Says where limits for a further study take a spread as known that is estimated as 0: how often
 * such limits held a further study in our simulation, and which limits do not do so.
 */
final class SpreadTakenAsKnown {
  private static final String CODE = "prediction-takes-spread-as-known";

  private static final Set<String> AS_KNOWN = Set.of("t-k-minus-2", "t-k-minus-1", "normal");

  private SpreadTakenAsKnown() {}

  /** A warning for each part of a result that has such limits. */
  static List<Result.Warning> of(ObjectNode plan, SynthesisResult result) {
    List<Result.Warning> warnings = new ArrayList<>();
    if (!AS_KNOWN.contains(plan.path("predictionInterval").asText())) {
      return warnings;
    }
    String held =
        ExactModels.asked(plan) ? say("analysis.held-of-counts") : say("analysis.held-of-effects");
    Problem found =
        plan.path("model").asText().equals("three-level") ? ofClusters() : ofOneValue(held);
    if (isAtZero(result.heterogeneity()) && isPredicted(result.summary())) {
      warnings.add(Result.Warning.of(found));
    }
    if (isAtZero(result.heterogeneity())
        && result.regression().filter(SpreadTakenAsKnown::isExpected).isPresent()) {
      warnings.add(
          Result.Warning.of(
              CODE, say("analysis.spread-about-moderators-taken-as-known", Map.of("held", held))));
    }
    result.listOfGroups().stream()
        .filter(
            group -> isAtZero(Optional.of(group.heterogeneity())) && isPredicted(group.summary()))
        .forEach(group -> warnings.add(Result.Warning.ofGroup(group.level(), found)));
    return warnings;
  }

  private static Problem ofOneValue(String held) {
    return new Problem("", CODE, say("analysis.spread-taken-as-known", Map.of("held", held)));
  }

  private static Problem ofClusters() {
    return new Problem("", CODE, say("analysis.spread-of-structure-taken-as-known"));
  }

  private static boolean isAtZero(Optional<Result.Heterogeneity> found) {
    return found.isPresent() && found.get().tauSquared().orElse(1) == 0;
  }

  private static boolean isPredicted(Optional<Result.Summary> summary) {
    return summary.filter(one -> one.predictionLower().isPresent()).isPresent();
  }

  private static boolean isExpected(RegressionResult regression) {
    Stream<RegressionResult.Prediction> points =
        regression.predictions().stream().flatMap(List::stream);
    Stream<RegressionResult.Prediction> curves =
        regression.curves().stream().flatMap(List::stream).flatMap(one -> one.points().stream());
    return Stream.concat(points, curves).anyMatch(one -> one.predictionLower().isPresent());
  }
}
