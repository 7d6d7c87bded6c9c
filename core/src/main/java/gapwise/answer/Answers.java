package gapwise.answer;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.QuestionPlan;
import gapwise.analysis.Runner;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.SelectionRows;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.problem.Problems;
import gapwise.selection.Question;
import gapwise.selection.QuestionJson;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.List;
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
    this.runner = Runner.with(new SelectionRows(selections));
  }

  /** Runs plans of every kind, those about the evidence base too. */
  public Runner runner() {
    return runner;
  }

  /** The rows that answer a question. */
  public Selection select(Question question) {
    return selections.apply(question);
  }

  /**
   * A result that a plan about the evidence base gave, together with the rows it came from; empty
   * for a plan about something else.
   */
  public Optional<Answer> of(Result result) {
    JsonNode evidence = result.plan().path("source").path("evidence");
    return QuestionJson.read(evidence, new Problems())
        .map(selections)
        .map(
            selection ->
                new Answer(
                    selection,
                    Optional.of(result.plan()),
                    Optional.of(new PlanOutcome.Done(result))));
  }

  /** The answer to a question: pooled by itself for each method where there are several. */
  public Answer ask(Question question) {
    Selection selection = selections.apply(question);
    boolean byMethod = severalMethods(selection);
    Optional<ObjectNode> plan =
        selection.rows().isEmpty()
            ? Optional.empty()
            : QuestionPlan.of(question, QuestionWords.of(question), byMethod);
    return new Answer(selection, plan, plan.map(json -> runner.run(json, Optional.empty())));
  }

  /**
   * How the outcome of a question runs over the length of missing bone, all methods together.
   *
   * @param asked line or curve; with too few series a line, or none, is taken and said
   */
  public LengthAnswer byLength(Question question, LengthShape asked) {
    Selection selection = selections.apply(question);
    List<String> notes = new ArrayList<>();
    Optional<LengthShape> shape =
        LengthPlan.allows(selection, asked)
            ? Optional.of(asked)
            : Optional.of(LengthShape.LINE).filter(line -> LengthPlan.allows(selection, line));
    if (shape.isEmpty()) {
      notes.add(
          "No line is drawn: it takes at least "
              + LengthPlan.FEWEST_FOR_LINE
              + " series that give a mean or median length, not all alike.");
    } else if (shape.get() != asked) {
      notes.add(
          "A straight line is drawn in place of a curve, which takes at least "
              + LengthPlan.FEWEST_FOR_CURVE
              + " series of different lengths.");
    }
    Answer answer = run(selection, shape);
    if (shape.isPresent()
        && answer.outcome().filter(PlanOutcome.Wrong.class::isInstance).isPresent()) {
      PlanOutcome.Wrong wrong = (PlanOutcome.Wrong) answer.outcome().get();
      wrong.problems().forEach(problem -> notes.add("No line is drawn: " + problem.message()));
      shape = Optional.empty();
      answer = run(selection, shape);
    }
    boolean fitted =
        answer
            .result()
            .flatMap(result -> SynthesisResult.of(result).regression())
            .flatMap(r -> r.curves())
            .isPresent();
    if (shape.isPresent() && !fitted) {
      notes.clear();
      notes.add("No line is drawn: too few of these series have all numbers needed.");
      shape = Optional.empty();
      answer = run(selection, shape);
    }
    if (shape.isPresent()) {
      answer.result().flatMap(Answers::halfEvents).ifPresent(notes::add);
    }
    return new LengthAnswer(answer, asked, shape, notes);
  }

  /**
   * Whether small series of a question tell another story than large ones, all methods together.
   */
  public Answer funnel(Question question) {
    Selection selection = selections.apply(question);
    Optional<ObjectNode> plan = FunnelPlan.of(selection);
    return new Answer(selection, plan, plan.map(json -> runner.run(json, Optional.empty())));
  }

  private static Optional<String> halfEvents(Result result) {
    return result.warnings().stream()
        .filter(warning -> warning.code().equals("zero-cells-corrected"))
        .findFirst()
        .map(
            warning ->
                "Where everybody or nobody in a series had the event, half an event was added to"
                    + " each side for the line, which draws it towards the middle.");
  }

  private Answer run(Selection selection, Optional<LengthShape> shape) {
    Optional<ObjectNode> plan = LengthPlan.of(selection, shape);
    return new Answer(selection, plan, plan.map(json -> runner.run(json, Optional.empty())));
  }

  private static boolean severalMethods(Selection selection) {
    return selection.rows().stream().map(row -> row.arm().method().principal()).distinct().count()
        > 1;
  }
}
