package gapwise.decision.option;

import gapwise.answer.MethodLine;
import gapwise.decision.certainty.Certainty;
import gapwise.decision.situation.Fit;
import java.util.Objects;

/** What is known of one outcome after one method. */
public sealed interface Cell {

  /** It cannot happen after this method. */
  record DoesNotApply() implements Cell {}

  /** No study of the evidence base treated people like this by this method. */
  record NoStudy() implements Cell {}

  /** Studies treated people like this by this method, and none counted it. */
  record NotCounted(int studies) implements Cell {}

  /** Groups report it in a way that no number can be taken from. */
  record NothingUsable() implements Cell {}

  /**
   * Something is known.
   *
   * @param line counts, average, what a new centre may expect, sentences
   * @param fit how the groups match the situation
   * @param number which number it is, so that a person can settle its certainty
   * @param certainty how certain it is
   */
  record Known(MethodLine line, Fit fit, JudgedNumber number, Certainty certainty) implements Cell {
    public Known {
      Objects.requireNonNull(line, "line");
      Objects.requireNonNull(fit, "fit");
      Objects.requireNonNull(number, "number");
      Objects.requireNonNull(certainty, "certainty");
    }
  }
}
