package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.QuestionPlan;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import java.util.Map;
import java.util.Optional;

/** The plan behind a funnel: all series in one, each with an effect and a standard error. */
final class FunnelPlan {
  private FunnelPlan() {}

  /** The plan; empty where the outcome is not pooled or no row was selected. */
  static Optional<ObjectNode> of(Selection selection) {
    if (selection.rows().isEmpty()) {
      return Optional.empty();
    }
    Optional<ObjectNode> plan = QuestionPlan.of(selection, title(selection.question()), false);
    plan.ifPresent(
        json -> {
          // An exact likelihood gives series no standard error of their own.
          QuestionPlan.byEffects(json);
          json.putArray("smallStudyEffects").add("egger-random");
          json.putObject("funnel");
        });
    return plan;
  }

  /** What plan and figure are called. */
  static String title(Question question) {
    return say("funnel.title", Map.of("question", QuestionWords.of(question)));
  }
}
