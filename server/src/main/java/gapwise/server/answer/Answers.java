package gapwise.server.answer;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.Outcome;
import gapwise.analysis.Result;
import gapwise.analysis.Runner;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import java.util.Optional;
import java.util.function.Function;

/**
 * Answers questions about the evidence base, each through a plan that anyone can run again. Safe
 * for use by many threads.
 */
public final class Answers {
  private final Function<Question, Selection> selections;
  private final Runner runner;

  /**
   * @param selections answers a question with its rows
   */
  public Answers(Function<Question, Selection> selections) {
    this.selections = selections;
    this.runner = Runner.with(new SelectedEvidence(selections));
  }

  /** Runs plans of every kind, those about the evidence base too. */
  public Runner runner() {
    return runner;
  }

  /** The rows that answer a question. */
  public Selection select(Question question) {
    return selections.apply(question);
  }

  /** The rows of a question together with a result that a plan about it gave. */
  public Answer of(Question question, Result result) {
    return new Answer(
        selections.apply(question),
        Optional.of(result.plan().path("measure").asText()),
        Optional.of(result.plan()),
        Optional.of(new Outcome.Done(result)));
  }

  /** The answer to a question: pooled by itself for each method where there are several. */
  public Answer ask(Question question) {
    Selection selection = selections.apply(question);
    Optional<String> measure = PlanRows.measure(question.outcome());
    if (measure.isEmpty() || PlanRows.of(selection, measure.get()).lines().isEmpty()) {
      return new Answer(selection, measure, Optional.empty(), Optional.empty());
    }
    ObjectNode plan = plan(question, measure.get(), severalMethods(selection));
    Outcome outcome = runner.run(plan, Optional.empty());
    return new Answer(selection, measure, Optional.of(plan), Optional.of(outcome));
  }

  private static boolean severalMethods(Selection selection) {
    return selection.rows().stream().map(row -> row.arm().method().principal()).distinct().count()
        > 1;
  }

  /** The plan of a question. */
  static ObjectNode plan(Question question, String measure, boolean byMethod) {
    ObjectNode plan = JsonNodeFactory.instance.objectNode();
    plan.put("task", "synthesis");
    plan.put("title", QuestionWords.of(question));
    plan.putObject("source").set("evidence", EvidenceSource.write(question));
    plan.put("measure", measure);
    plan.put("model", "random-effects");
    if (byMethod) {
      plan.put("subgroup", "method");
    }
    return plan;
  }
}
