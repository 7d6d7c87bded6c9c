package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.QuestionPlan;
import gapwise.analysis.Runner;
import gapwise.analysis.moderators.RegressionResult;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.SelectionRows;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.budget.Memory;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Answers questions about the evidence base, each through a plan that anyone can run again. Safe
 * for use by many threads.
 */
public final class Answers {
  private final Memory.Kept<Question, Selection> selections;
  private final Memory.Kept<Split, Answer> pooled;
  private final Memory.Kept<Shaped, LengthAnswer> byLength;
  private final Memory.Kept<Question, Answer> funnels;
  private final Runner runner;

  private record Split(Question question, Optional<DetailKind> by) {}

  private record Shaped(Question question, LengthShape shape) {}

  /**
   * @param selections answers a question with its rows
   */
  public Answers(Function<Question, Selection> selections) {
    this(selections, Memory.NONE);
  }

  /**
   * @param selections answers a question with its rows, for ever with the same
   * @param memory keeps these, and what is made of them
   */
  public Answers(Function<Question, Selection> selections, Memory memory) {
    this.selections = memory.keep(selections, Answers::rows);
    this.pooled = memory.keep(this::askAnew, answer -> rows(answer.selection()));
    this.byLength = memory.keep(this::byLengthAnew, told -> rows(told.answer().selection()));
    this.funnels = memory.keep(this::funnelAnew, answer -> rows(answer.selection()));
    this.runner = Runner.with(new SelectionRows(this.selections::of));
  }

  private static int rows(Selection selection) {
    return selection.rows().size() + selection.leftOut().size();
  }

  /** Runs plans of every kind, those about the evidence base too. */
  public Runner runner() {
    return runner;
  }

  /** The rows that answer a question. */
  public Selection select(Question question) {
    return selections.of(question);
  }

  /** Whether these rows are there already. */
  public boolean hasSelected(Question question) {
    return selections.has(question);
  }

  /**
   * What came of a plan that somebody sent.
   *
   * @param answer the result together with the rows it was made from; empty for a plan that selects
   *     none from the evidence base
   */
  public record Ran(PlanOutcome outcome, Optional<Answer> answer) {}

  /**
   * Runs a plan that somebody sent, and keeps the selection that it was run on.
   *
   * @param folder as for {@link Runner#run(String, Optional)}
   */
  public Ran run(String plan, Optional<Path> folder) {
    List<Selection> made = new ArrayList<>();
    Runner keeping =
        Runner.with(
            new SelectionRows(
                question -> {
                  Selection selection = selections.of(question);
                  made.add(selection);
                  return selection;
                }));
    PlanOutcome outcome = keeping.run(plan, folder);
    return new Ran(
        outcome,
        outcome instanceof PlanOutcome.Done done && made.size() == 1
            ? Optional.of(
                new Answer(made.get(0), Optional.of(done.result().plan()), Optional.of(outcome)))
            : Optional.empty());
  }

  /** Runs a plan about the rows of a selection on these rows. */
  public static PlanOutcome run(Selection selection, ObjectNode plan) {
    return Runner.with(new SelectionRows(question -> selection)).run(plan, Optional.empty());
  }

  /** The answer to a question: pooled by itself for each method where there are several. */
  public Answer ask(Question question) {
    return ask(question, Optional.empty());
  }

  /**
   * The answer split by a detail of the method: groups of patients of which a paper states one word
   * of it pooled by themselves, those of which it states none apart. By method, as without it,
   * where the groups are of several methods or none of them states it.
   */
  public Answer ask(Question question, Optional<DetailKind> split) {
    return pooled.of(new Split(question, split));
  }

  /** Whether that answer is there already. */
  public boolean hasAsked(Question question, Optional<DetailKind> split) {
    return pooled.has(new Split(question, split));
  }

  private Answer askAnew(Split asked) {
    Selection selection = selections.of(asked.question()).byMethod();
    Optional<DetailKind> split = asked.by().filter(kind -> canBeSplit(selection, kind));
    return split.equals(asked.by()) ? pooled(selection, split) : ask(asked.question());
  }

  /** Whether rows are of one method and some state the detail. */
  private static boolean canBeSplit(Selection selection, DetailKind kind) {
    return !severalMethods(selection)
        && selection.rows().stream()
            .flatMap(row -> row.arm().listedDetails().stream())
            .anyMatch(one -> one.kind().equals(kind));
  }

  /**
   * The answer from rows that were selected already, without how it moves under other priors, for a
   * table of many answers: the numbers are the same, and cost a third.
   */
  public static Answer numbers(Selection selection) {
    Optional<ObjectNode> plan = plan(selection, Optional.<DetailKind>empty());
    plan.ifPresent(json -> json.remove("priorSensitivity"));
    return new Answer(selection, plan, plan.map(json -> run(selection, json)));
  }

  /** The same from rows that were selected already. */
  static Answer pooled(Selection selection) {
    return pooled(selection, Optional.empty());
  }

  private static Answer pooled(Selection selection, Optional<DetailKind> split) {
    Optional<ObjectNode> plan = plan(selection, split);
    return new Answer(selection, plan, plan.map(json -> run(selection, json)));
  }

  private static Optional<ObjectNode> plan(Selection selection, Optional<DetailKind> split) {
    String title = QuestionWords.of(selection.question());
    return selection.rows().isEmpty()
        ? Optional.empty()
        : split
            .map(kind -> QuestionPlan.splitBy(selection, title, kind))
            .orElseGet(() -> QuestionPlan.of(selection, title, severalMethods(selection)));
  }

  /**
   * How the outcome of a question runs over the length of missing bone, all methods together.
   *
   * @param asked line or curve; with too few series a line, or none, is taken and said
   */
  public LengthAnswer byLength(Question question, LengthShape asked) {
    return byLength.of(new Shaped(question, asked));
  }

  /** Whether that answer is there already. */
  public boolean hasByLength(Question question, LengthShape asked) {
    return byLength.has(new Shaped(question, asked));
  }

  private LengthAnswer byLengthAnew(Shaped shaped) {
    LengthShape asked = shaped.shape();
    Selection selection = selections.of(shaped.question());
    List<String> notes = new ArrayList<>();
    Optional<LengthShape> shape =
        LengthPlan.allows(selection, asked)
            ? Optional.of(asked)
            : Optional.of(LengthShape.LINE).filter(line -> LengthPlan.allows(selection, line));
    if (shape.isEmpty()) {
      notes.add(say("answer.no-line-few", Map.of("fewest", LengthPlan.FEWEST_FOR_LINE)));
    } else if (shape.get() != asked) {
      notes.add(say("answer.line-for-curve", Map.of("fewest", LengthPlan.FEWEST_FOR_CURVE)));
    }
    Answer answer = run(selection, shape);
    if (shape.isPresent()
        && answer.outcome().filter(PlanOutcome.Wrong.class::isInstance).isPresent()) {
      PlanOutcome.Wrong wrong = (PlanOutcome.Wrong) answer.outcome().get();
      wrong
          .problems()
          .forEach(
              problem ->
                  notes.add(say("answer.no-line-because", Map.of("problem", problem.message()))));
      shape = Optional.empty();
      answer = run(selection, shape);
    }
    if (shape.isPresent() && !isFitted(answer)) {
      answer = byEffects(answer);
    }
    if (shape.isPresent() && !isFitted(answer)) {
      notes.clear();
      notes.add(say("answer.no-line-unusable"));
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
    return funnels.of(question);
  }

  /** Whether that answer is there already. */
  public boolean hasFunnel(Question question) {
    return funnels.has(question);
  }

  private Answer funnelAnew(Question question) {
    Selection selection = selections.of(question);
    Optional<ObjectNode> plan = FunnelPlan.of(selection);
    return new Answer(selection, plan, plan.map(json -> run(selection, json)));
  }

  private static boolean isFitted(Answer answer) {
    return answer
        .result()
        .flatMap(result -> SynthesisResult.of(result).regression())
        .flatMap(RegressionResult::curves)
        .isPresent();
  }

  /** Where counts by themselves have no best line, as with no event in any long defect. */
  private static Answer byEffects(Answer answer) {
    return answer
        .plan()
        .flatMap(QuestionPlan::moderatedByEffects)
        .map(
            plan ->
                new Answer(
                    answer.selection(),
                    Optional.of(plan),
                    Optional.of(run(answer.selection(), plan))))
        .orElse(answer);
  }

  private static Optional<String> halfEvents(Result result) {
    return result.warnings().stream()
        .filter(warning -> warning.code().equals("zero-cells-corrected"))
        .findFirst()
        .map(
            warning ->
                say(
                    result.plan().path("measure").asText().equals("proportion")
                        ? "answer.half-events"
                        : "answer.half-events-of-rates"));
  }

  private Answer run(Selection selection, Optional<LengthShape> shape) {
    Optional<ObjectNode> plan = LengthPlan.of(selection, shape);
    return new Answer(selection, plan, plan.map(json -> run(selection, json)));
  }

  private static boolean severalMethods(Selection selection) {
    return selection.rows().stream().map(row -> row.arm().method().principal()).distinct().count()
        > 1;
  }
}
