package gapwise.figure.curve;

import gapwise.figure.value.Check;
import gapwise.figure.value.Limits;
import java.util.List;
import java.util.Optional;

/**
 * One curve of a {@link CurveFigure}: the share without the event over time, in steps.
 *
 * @param name what it is of, such as a method or a study
 * @param pooled whether it is of several studies; drawn in the accent
 * @param steps where it falls; before the first it is 1
 * @param end the time up to which it is known
 * @param lastSeen times at which patients were last seen without the event; may be empty
 * @param atRisk patients still followed, at the times of {@link CurveFigure#marks}; may be empty
 */
public record Curve(
    String name,
    boolean pooled,
    List<Step> steps,
    double end,
    List<Double> lastSeen,
    List<AtRisk> atRisk) {
  /**
   * Where a curve falls.
   *
   * @param time 0 or more
   * @param share without the event just after it, 0 to 1
   * @param limits of the share; empty for none
   */
  public record Step(double time, double share, Optional<Limits> limits) {
    public Step {
      Check.finite(time, "time");
      if (!(time >= 0 && share >= 0 && share <= 1)) {
        throw new IllegalArgumentException("no step: share " + share + " at " + time);
      }
    }
  }

  /** Patients followed at least so long. */
  public record AtRisk(double time, int patients) {}

  public Curve {
    Check.words(name, "name");
    steps = List.copyOf(steps);
    lastSeen = List.copyOf(lastSeen);
    atRisk = List.copyOf(atRisk);
    double time = 0;
    double share = 1;
    for (Step step : steps) {
      if (step.time() < time || step.share() > share) {
        throw new IllegalArgumentException(name + " goes back at " + step);
      }
      time = step.time();
      share = step.share();
    }
    if (!(Check.finite(end, "end") >= time)) {
      throw new IllegalArgumentException(name + " ends at " + end + ", before its last step");
    }
  }

  /** The share without the event just after a time. */
  double shareAt(double time) {
    double share = 1;
    for (Step step : steps) {
      if (step.time() > time) {
        break;
      }
      share = step.share();
    }
    return share;
  }
}
