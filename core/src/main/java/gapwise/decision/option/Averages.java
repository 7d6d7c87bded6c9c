package gapwise.decision.option;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.QuestionPlan;
import gapwise.analysis.bayesian.BayesianResult;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.answer.Answers;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Quantity;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the posteriors say of the average over centres of one outcome, method by method: the usual
 * plan, asked how likely the average lies above each of many values. The same model as behind the
 * table.
 */
public final class Averages {
  /**
   * Values of a share that are asked: so fine that straight lines between them lose nothing seen.
   */
  private static final int STEPS = 100;

  /** What has a unit is asked up to so many times its largest upper limit (our choice). */
  private static final double BEYOND = 1.5;

  private Averages() {}

  /** The distributions of the methods of a column that have one. */
  public static Map<Method, Distribution> of(Answers answers, OptionTable table, Column column) {
    Map<Method, Distribution> found = new HashMap<>();
    for (Option option : table.options()) {
      if (table.cell(option, column) instanceof Cell.Known known) {
        Question question = column.question(option.method());
        of(answers.select(question).byMethod(), places(column.measure(), known))
            .ifPresent(distribution -> found.put(option.method(), distribution));
      }
    }
    return found;
  }

  private static List<Double> places(Quantity measure, Cell.Known known) {
    double most =
        measure.kind() == Quantity.Kind.OF_100
            ? 1
            : known.line().rows().stream()
                    .flatMap(row -> row.value().stream())
                    .mapToDouble(value -> value.limits().upper())
                    .filter(Double::isFinite)
                    .max()
                    .orElse(1)
                * BEYOND;
    List<Double> places = new ArrayList<>();
    for (int i = 1; i < STEPS; i++) {
      places.add(most * i / STEPS);
    }
    return places;
  }

  private static Optional<Distribution> of(Selection selection, List<Double> places) {
    if (selection.rows().isEmpty()) {
      return Optional.empty();
    }
    Optional<ObjectNode> plan = QuestionPlan.of(selection, "", false);
    if (plan.isEmpty() || !plan.get().path("model").asText().equals("bayesian")) {
      return Optional.empty();
    }
    plan.get().remove("priorSensitivity");
    ArrayNode asked = plan.get().putArray("probabilities");
    places.forEach(place -> asked.addObject().put("below", place));
    return Answers.run(selection, plan.get()) instanceof PlanOutcome.Done done
        ? of(done.result(), places)
        : Optional.empty();
  }

  private static Optional<Distribution> of(Result result, List<Double> places) {
    return SynthesisResult.of(result)
        .bayesian()
        .flatMap(BayesianResult::probabilities)
        .filter(all -> all.size() == places.size())
        .map(all -> distribution(places, all));
  }

  private static Distribution distribution(
      List<Double> places, List<BayesianResult.Probability> all) {
    List<Double> at = new ArrayList<>();
    List<Double> below = new ArrayList<>();
    double last = 0;
    at.add(0.0);
    below.add(0.0);
    for (int i = 0; i < places.size(); i++) {
      OptionalDouble average = all.get(i).average();
      // Quadrature may differ by its last digits from one value to the next.
      last = Math.max(last, Math.min(1, average.orElse(all.get(i).mean())));
      at.add(places.get(i));
      below.add(last);
    }
    double step = places.get(1) - places.get(0);
    at.add(places.get(places.size() - 1) + step);
    below.add(1.0);
    return new Distribution(at, below);
  }
}
