package gapwise.effect;

import gapwise.numeric.ReferenceDistribution;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Effects as studies report them, with variance, standard error or limits, whichever is there in
 * this order. Limits give (upper - lower)/(2 z).
 *
 * @param ratio whether effects and limits are ratios, whose logs are taken; standard errors and
 *     variances are then those of the log
 * @param level of the limits reported
 */
record ReportedEffect(boolean ratio, double level) implements Measure<GivenEffect> {
  @Override
  public List<Role> roles() {
    return List.of(
        new Role("effect", true),
        new Role("variance", false),
        new Role("standardError", false),
        new Role("lower", false),
        new Role("upper", false));
  }

  @Override
  public Optional<GivenEffect> read(Reported row) {
    OptionalDouble effect = row.number("effect");
    if (effect.isEmpty()) {
      row.missing("effect");
      return Optional.empty();
    }
    OptionalDouble variance = row.optional("variance", 0);
    OptionalDouble error = row.optional("standardError", 0);
    OptionalDouble lower = row.number("lower");
    OptionalDouble upper = row.number("upper");
    boolean limits = lower.isPresent() && upper.isPresent();
    if (ratio && (notPositive(effect) || notPositive(lower) || notPositive(upper))) {
      row.wrong(
          "effect", "ratio-not-positive", "ratios and their limits must be above 0; correct them");
      return Optional.empty();
    }
    if (limits
        && !(lower.getAsDouble() <= effect.getAsDouble()
            && effect.getAsDouble() <= upper.getAsDouble())) {
      row.wrong(
          "effect",
          "out-of-order",
          "found "
              + effect.getAsDouble()
              + " outside its limits "
              + lower.getAsDouble()
              + " and "
              + upper.getAsDouble()
              + "; correct them");
      return Optional.empty();
    }
    OptionalDouble squared = variance;
    if (squared.isEmpty() && error.isPresent()) {
      squared = square(error.getAsDouble());
    } else if (squared.isEmpty() && limits) {
      double z = ReferenceDistribution.normal().multiplier(level);
      squared = square((scaled(upper) - scaled(lower)) / (2 * z));
    }
    return Optional.of(new GivenEffect(scaled(effect), squared));
  }

  private static boolean notPositive(OptionalDouble value) {
    return value.isPresent() && value.getAsDouble() <= 0;
  }

  private double scaled(OptionalDouble value) {
    return ratio ? Math.log(value.getAsDouble()) : value.getAsDouble();
  }

  private static OptionalDouble square(double error) {
    return OptionalDouble.of(error * error);
  }

  @Override
  public List<StudyEffect> effects(List<GivenEffect> studies) {
    return studies.stream().map(ReportedEffect::effect).toList();
  }

  private static StudyEffect effect(GivenEffect given) {
    return given.variance().isPresent()
        ? StudyEffect.of(given.estimate(), given.variance().getAsDouble())
        : StudyEffect.withoutVariance(
            given.estimate(),
            "missing-value",
            "neither variance nor standard error nor both limits are reported, so it has no weight");
  }

  @Override
  public BackTransform shown(List<GivenEffect> pooled) {
    return ratio ? BackTransform.EXPONENTIAL : BackTransform.NONE;
  }
}
