package gapwise.desk;

import gapwise.paper.curve.Rebuilt;
import gapwise.paper.curve.Reported;
import gapwise.paper.trace.DataPoint;
import gapwise.paper.trace.Steps;
import java.util.List;
import java.util.Objects;

/** What came of the points along a curve. */
public sealed interface CurveMade {
  /**
   * A curve, and the times of patients rebuilt from it.
   *
   * @param steps the curve as it was read
   * @param rebuilt how it was rebuilt, and how far that is from what was read and printed
   */
  record Made(Steps steps, Rebuilt rebuilt) implements CurveMade {
    public Made {
      Objects.requireNonNull(steps, "steps");
      Objects.requireNonNull(rebuilt, "rebuilt");
    }
  }

  /**
   * Something that a person must settle first.
   *
   * @param sentence what was found and what to do
   */
  record Asked(String sentence) implements CurveMade {}

  /**
   * Puts points together and rebuilds what lies behind them.
   *
   * @param points shares, not percentages
   * @param withEvent whether the person says that the curve shows the share with the event
   * @param reported what the paper prints about the curve
   */
  static CurveMade of(List<DataPoint> points, boolean withEvent, Reported reported) {
    Steps.Traced traced = Steps.of(points);
    if (traced instanceof Steps.Question question) {
      return new Asked(question.sentence());
    }
    Steps steps = ((Steps.Found) traced).steps();
    if (steps.rises() != withEvent) {
      return new Asked(
          withEvent
              ? "The points do not rise from 0 %, but you say that the curve shows the share with"
                  + " the event. Choose the share without it, or set the points again."
              : "The points rise from 0 %, but you say that the curve shows the share without the"
                  + " event. Choose the share with it, or set the points again.");
    }
    return new Made(steps, Rebuilt.of(steps, reported));
  }
}
