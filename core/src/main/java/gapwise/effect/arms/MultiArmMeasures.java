package gapwise.effect.arms;

import gapwise.effect.ArmMean;
import gapwise.effect.Measure;
import gapwise.effect.MeasureOptions;
import gapwise.problem.Problem;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Every measure that compares arms in rows of their own; a new one is one line here. */
public final class MultiArmMeasures {
  private static final Map<String, Function<MeasureOptions, MultiArmMeasure<?>>> ALL =
      new LinkedHashMap<>();

  static {
    ALL.put("odds-ratio", o -> new OddsOfArms(o.emptyCells()));
    ALL.put("risk-ratio", o -> new RisksOfArms(o.emptyCells()));
    ALL.put("risk-difference", o -> new RiskDifferencesOfArms());
    ALL.put("mean-difference", o -> new MeansOfArms(false));
    ALL.put(
        "standardised-mean-difference",
        o -> new StandardisedArms(o.exactFactor(), o.factorSquaredVariance()));
    ALL.put("ratio-of-means", o -> new MeansOfArms(true));
    ALL.put("incidence-rate-ratio", o -> new RatesOfArms(o.emptyCells()));
  }

  private MultiArmMeasures() {}

  /** The names of all of them. */
  public static List<String> names() {
    return List.copyOf(ALL.keySet());
  }

  /** The measure of a name; empty if arms are not compared by it. */
  public static Optional<MultiArmMeasure<?>> named(String measure, MeasureOptions options) {
    return Optional.ofNullable(ALL.get(measure)).map(maker -> maker.apply(options));
  }

  /** Roles of counts in one arm. */
  static List<Measure.Role> counts() {
    return List.of(new Measure.Role("events", true), new Measure.Role("total", true));
  }

  /** Why an arm has no variance of its mean; empty if it has one. */
  static Optional<Problem> withoutSpread(ArmMean arm) {
    if (arm.squaredStandardError().isPresent()) {
      return Optional.empty();
    }
    return arm.sd().isPresent()
        ? because("too-few-patients", "a group of one patient has no standard deviation")
        : because(
            "missing-standard-deviation", "no standard deviation is reported or can be worked out");
  }

  static Optional<Problem> because(String code, String message) {
    return Optional.of(new Problem("", code, message));
  }
}
