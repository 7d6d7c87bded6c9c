package gapwise.decision.option;

import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Quantity;
import gapwise.selection.LeftOut;
import gapwise.selection.Question;
import gapwise.selection.SelectedRow;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * One outcome that matters.
 *
 * @param aspect what matters
 * @param questions what is asked of the evidence base: of methods that keep the limb, and of
 *     amputations, on the clock and in the form that their rows are in
 * @param measure what the numbers are
 * @param others other ways in which papers count it, of which some group here does
 * @param matters the difference that would matter, in the unit of the numbers; empty for none named
 * @param rows all rows of it, of every method
 * @param retracted what would be among them, had its publication not been retracted
 */
public record Column(
    Aspect aspect,
    List<Question> questions,
    Quantity measure,
    List<Outcome> others,
    OptionalDouble matters,
    List<SelectedRow> rows,
    List<LeftOut> retracted) {
  public Column {
    Objects.requireNonNull(aspect, "aspect");
    questions = List.copyOf(questions);
    Objects.requireNonNull(measure, "measure");
    others = List.copyOf(others);
    Objects.requireNonNull(matters, "matters");
    rows = List.copyOf(rows);
    retracted = List.copyOf(retracted);
  }

  /** The way in which it is counted, the same for every method. */
  public Outcome outcome() {
    return questions.get(0).outcome();
  }

  /** What is asked of one method, so that the same can be asked elsewhere. */
  public Question question(Method method) {
    Question question = questions.get(Aspect.isAmputation(method) ? 1 : 0);
    return question.withAmong(question.among().withMethods(Set.of(method.code())));
  }
}
