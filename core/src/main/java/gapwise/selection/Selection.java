package gapwise.selection;

import java.util.List;
import java.util.Objects;

/**
 * The rows that answer a question.
 *
 * @param question what was asked
 * @param rows one for each arm that enters, in order of study and arm
 * @param leftOut what could have entered and did not, with the reason
 * @param change number of the last change of the evidence base that was read
 */
public record Selection(
    Question question, List<SelectedRow> rows, List<LeftOut> leftOut, long change) {
  public Selection {
    Objects.requireNonNull(question, "question");
    rows = List.copyOf(rows);
    leftOut = List.copyOf(leftOut);
  }
}
