package gapwise.decision.choice;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.MethodLine;
import gapwise.decision.option.Aspect;
import gapwise.decision.option.Cell;
import gapwise.decision.option.Column;
import gapwise.decision.option.Distribution;
import gapwise.decision.option.Option;
import gapwise.decision.option.OptionTable;
import gapwise.evidence.vocabulary.Method;
import java.util.Map;

/** Where the draws of one outcome after one method come from. */
sealed interface Source {

  /** From the posterior of its average over centres. */
  record Drawn(Distribution average) implements Source {}

  /**
   * It is what it is, whatever studies say.
   *
   * @param value in the unit of the outcome, a share from 0 to 1
   * @param why in words
   */
  record Certain(double value, String why) implements Source {}

  /** Nothing can be drawn. */
  record Unknown(String why) implements Source {}

  /** It means nothing after this method. */
  record Senseless(String why) implements Source {}

  static Source of(
      OptionTable table, Option option, Column column, Map<Method, Distribution> averages) {
    Cell cell = table.cell(option, column);
    Map<String, String> outcome = Map.of("outcome", column.aspect().label());
    Distribution average = averages.get(option.method());
    if (average != null) {
      return new Drawn(average);
    }
    if (cell instanceof Cell.DoesNotApply) {
      return without(column.aspect(), outcome);
    }
    if (cell instanceof Cell.NoStudy) {
      return new Unknown(say("choice.no-study", outcome));
    }
    if (cell instanceof Cell.NotCounted) {
      return new Unknown(say("choice.not-counted", outcome));
    }
    return cell instanceof Cell.Known known
            && known.line().finding() instanceof MethodLine.OneSeries
        ? new Unknown(say("choice.one-series", outcome))
        : new Unknown(say("choice.no-average", outcome));
  }

  /** What cannot happen is either certain or without sense. */
  private static Source without(Aspect aspect, Map<String, String> outcome) {
    return switch (aspect) {
      case FRAME_TIME -> new Certain(0, say("choice.no-frame", outcome));
      case DONOR_SITE -> new Certain(0, say("choice.no-donor", outcome));
      case LATER_AMPUTATION -> new Certain(1, say("choice.limb-lost", outcome));
      default -> new Senseless(say("choice.does-not-apply", outcome));
    };
  }
}
