package gapwise.synthesis.survival;

import gapwise.budget.Work;
import gapwise.effect.Interval;
import gapwise.numeric.ReferenceDistribution;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * The share of patients still without the event: product over event times of 1 - d/n (Kaplan and
 * Meier, J Am Stat Assoc 1958;53:457), with Greenwood's variance S^2 sum d/(n (n - d)). The curve
 * is known up to the longest time; beyond it only if the last patient had the event. Immutable.
 */
public final class KaplanMeier {
  /** Products of ratios of whole numbers that equal one half miss it by rounding only. */
  private static final double ROUNDING = 1e-9;

  private final List<Step> steps;
  private final int patients;
  private final double longest;

  /**
   * One time at which something came.
   *
   * @param time of the events
   * @param atRisk patients followed at least so long
   * @param events at this time, at least 1
   * @param survival just after it
   * @param greenwood sum of d/(n (n - d)) up to it: the variance of log survival; infinite once
   *     survival is 0
   */
  public record Step(double time, int atRisk, int events, double survival, double greenwood) {}

  private KaplanMeier(List<Step> steps, int patients, double longest) {
    this.steps = steps;
    this.patients = patients;
    this.longest = longest;
  }

  /** The curve of one group; grows with the number of patients. */
  public static KaplanMeier of(PatientTimes times) {
    Work.check();
    List<PatientTime> all = times.patients();
    List<Step> steps = new ArrayList<>();
    double survival = 1;
    double greenwood = 0;
    int i = 0;
    while (i < all.size()) {
      double time = all.get(i).time();
      int atRisk = all.size() - i;
      int events = 0;
      for (; i < all.size() && all.get(i).time() == time; i++) {
        events += all.get(i).event() ? 1 : 0;
      }
      if (events > 0) {
        survival *= (double) (atRisk - events) / atRisk;
        greenwood += events / ((double) atRisk * (atRisk - events));
        steps.add(new Step(time, atRisk, events, survival, greenwood));
      }
    }
    return new KaplanMeier(List.copyOf(steps), all.size(), times.longest());
  }

  /** The event times in order; empty if no event came. */
  public List<Step> steps() {
    return steps;
  }

  /** Survival just after a time; empty where the curve is not known. */
  public OptionalDouble survivalAt(double time) {
    return isKnownAt(time) ? OptionalDouble.of(survival(time)) : OptionalDouble.empty();
  }

  /** Greenwood's standard error of survival; empty where the curve is not known. */
  public OptionalDouble standardErrorAt(double time) {
    if (!isKnownAt(time)) {
      return OptionalDouble.empty();
    }
    double survival = survival(time);
    return OptionalDouble.of(survival == 0 ? 0 : survival * Math.sqrt(greenwood(time)));
  }

  /**
   * Limits of survival on the complementary log-log scale, which stay between 0 and 1 (Kalbfleisch
   * and Prentice, The Statistical Analysis of Failure Time Data, 1980). Empty where the curve is
   * not known, and where survival is 0 or 1: these limits have no width there.
   */
  public Optional<Interval> limitsAt(double time, double level) {
    return isKnownAt(time) ? limits(survival(time), greenwood(time), level) : Optional.empty();
  }

  private static Optional<Interval> limits(double survival, double greenwood, double level) {
    return LogLogLimits.of(
        survival, Math.sqrt(greenwood), ReferenceDistribution.normal().multiplier(level));
  }

  /** The first time at which survival is at or below one half; empty if the curve stays above. */
  public OptionalDouble median() {
    return firstAtOrBelowHalf(Step::survival);
  }

  /** The first time at which the lower limit of survival is at or below one half. */
  public OptionalDouble medianLower(double level) {
    return firstAtOrBelowHalf(
        step ->
            limits(step.survival(), step.greenwood(), level)
                .map(Interval::lower)
                .orElse(step.survival()));
  }

  /** The first time at which the upper limit of survival is at or below one half. */
  public OptionalDouble medianUpper(double level) {
    return firstAtOrBelowHalf(
        step -> limits(step.survival(), step.greenwood(), level).map(Interval::upper).orElse(1.0));
  }

  private OptionalDouble firstAtOrBelowHalf(ToDoubleFunction<Step> height) {
    return steps.stream()
        .filter(step -> height.applyAsDouble(step) <= 0.5 + ROUNDING)
        .mapToDouble(Step::time)
        .findFirst();
  }

  /**
   * The restricted mean; its variance is the sum over event times of (area still to come)^2 d/(n (n
   * - d)). Empty if the curve is not known up to the horizon.
   *
   * @param horizon above 0
   */
  public Optional<RestrictedMean> restrictedMean(double horizon) {
    if (!isKnownAt(horizon)) {
      return Optional.empty();
    }
    double area = 0;
    double variance = 0;
    double until = horizon;
    for (int i = lastStepAt(horizon); i >= 0; i--) {
      Step step = steps.get(i);
      area += step.survival() * (until - step.time());
      until = step.time();
      if (step.atRisk() > step.events()) {
        double term = step.events() / ((double) step.atRisk() * (step.atRisk() - step.events()));
        variance += area * area * term;
      }
    }
    return Optional.of(new RestrictedMean(horizon, area + until, Math.sqrt(variance)));
  }

  /** Whether patients were followed so long, or none was left without the event before. */
  public boolean isKnownAt(double time) {
    return time <= longest || (!steps.isEmpty() && steps.get(steps.size() - 1).survival() == 0);
  }

  /** Number of patients the curve starts with. */
  public int patients() {
    return patients;
  }

  /** The longest time that a patient was followed. */
  public double longest() {
    return longest;
  }

  /** Survival just after a time, held level beyond the longest one. */
  double survival(double time) {
    int last = lastStepAt(time);
    return last < 0 ? 1 : steps.get(last).survival();
  }

  private double greenwood(double time) {
    int last = lastStepAt(time);
    return last < 0 ? 0 : steps.get(last).greenwood();
  }

  /** The place of the last step at or before a time; -1 if there is none. */
  private int lastStepAt(double time) {
    int low = 0;
    int high = steps.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (steps.get(middle).time() <= time) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low - 1;
  }
}
