package gapwise.decision.option;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.MethodLine;
import gapwise.decision.certainty.Certainty;
import gapwise.decision.situation.Fit;
import java.util.Map;
import java.util.Objects;

/** What is known of one outcome after one method. */
public sealed interface Cell {
  /** Why there is no number, in a few words; empty where something is known. */
  String whyNot();

  /** It cannot happen after this method. */
  record DoesNotApply() implements Cell {
    @Override
    public String whyNot() {
      return say("decision.does-not-apply");
    }
  }

  /** No study of the evidence base treated people like this by this method. */
  record NoStudy() implements Cell {
    @Override
    public String whyNot() {
      return say("decision.no-study");
    }
  }

  /** Studies treated people like this by this method, and none counted it. */
  record NotCounted(int studies) implements Cell {
    @Override
    public String whyNot() {
      return say("decision.not-counted", Map.of("studies", studies));
    }
  }

  /** Groups report it in a way that no number can be taken from. */
  record NothingUsable() implements Cell {
    @Override
    public String whyNot() {
      return say("decision.nothing-usable");
    }
  }

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

    @Override
    public String whyNot() {
      return "";
    }
  }
}
