package gapwise.course;

import gapwise.selection.LeftOut;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import java.util.List;
import java.util.Objects;

/**
 * How an event comes over time after each method.
 *
 * @param selection the curves that enter as rows; the numbers of these rows mean nothing
 * @param horizon months to which restricted means reach
 * @param methods those with a curve, in the order of the vocabulary
 * @param leftOut what could have entered and did not, with the reason
 */
public record CourseAnswer(
    Selection selection, int horizon, List<MethodCourse> methods, List<LeftOut> leftOut) {
  public CourseAnswer {
    Objects.requireNonNull(selection, "selection");
    methods = List.copyOf(methods);
    leftOut = List.copyOf(leftOut);
  }

  /** What was asked. */
  public Question question() {
    return selection.question();
  }

  /** All curves that enter. */
  public List<CurveTaken> curves() {
    return methods.stream().flatMap(method -> method.curves().stream()).toList();
  }
}
