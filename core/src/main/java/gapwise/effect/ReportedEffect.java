package gapwise.effect;

import gapwise.effect.SpreadConversion.FromTest;
import gapwise.numeric.ReferenceDistribution;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Effects as studies report them, with variance, standard error, limits or the p value of the
 * effect, whichever is there in this order. Limits give (upper - lower)/(2 z), with z of the level
 * they were made at: that of the row if it names one, else that of the plan. A two-sided p value
 * gives |effect|/z on the analysis scale.
 *
 * @param ratio whether effects and limits are ratios, whose logs are taken; standard errors and
 *     variances are then those of the log
 * @param limitsLevel of the limits reported, above 0 and below 1
 */
record ReportedEffect(boolean ratio, double limitsLevel) implements Measure<GivenEffect> {
  /**
   * Share of half the width of an interval by which an effect may lie beside its middle. Rounding
   * of short numbers moves it by up to about a seventh (0.2 with 0.1 to 0.5 as a ratio). Common
   * practice, no source.
   */
  private static final double MOST_OFF_CENTRE = 0.2;

  @Override
  public List<Role> roles() {
    return List.of(
        new Role("effect", true),
        new Role("variance", false),
        new Role("standardError", false),
        new Role("lower", false),
        new Role("upper", false),
        new Role("limitsLevel", false),
        new Role("pValue", false));
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
    OptionalDouble level = row.number("limitsLevel");
    if (level.isPresent() && !(level.getAsDouble() > 0 && level.getAsDouble() < 1)) {
      row.wrong(
          "limitsLevel",
          "out-of-range",
          "found "
              + level.getAsDouble()
              + ", expected a level above 0 and below 1, such as 0.95 for limits of 95 %");
      return Optional.empty();
    }
    OptionalDouble squared = variance;
    boolean offCentre = false;
    if (squared.isEmpty() && error.isPresent()) {
      squared = square(error.getAsDouble());
    } else if (squared.isEmpty() && limits) {
      double z = ReferenceDistribution.normal().multiplier(level.orElse(limitsLevel));
      double half = (scaled(upper) - scaled(lower)) / 2;
      squared = square(half / z);
      double beside = Math.abs((scaled(upper) + scaled(lower)) / 2 - scaled(effect));
      offCentre = beside > MOST_OFF_CENTRE * half;
    }
    return Optional.of(
        squared.isPresent()
            ? new GivenEffect(scaled(effect), squared, offCentre, FromTest.NONE)
            : tested(row, scaled(effect)));
  }

  /** An effect with a p value at most. */
  private static GivenEffect tested(Reported row, double effect) {
    if (row.isBoundOfP("pValue")) {
      return new GivenEffect(effect, OptionalDouble.empty(), false, FromTest.SILENT);
    }
    OptionalDouble p = row.optionalP("pValue");
    if (p.isEmpty()) {
      return new GivenEffect(effect, p);
    }
    OptionalDouble error = SpreadConversion.errorFromPValue(effect, p.getAsDouble());
    return error.isEmpty()
        ? new GivenEffect(effect, error, false, FromTest.SILENT)
        : new GivenEffect(effect, square(error.getAsDouble()), false, FromTest.P_VALUE_OF_EFFECT);
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
            given.fromTest() == FromTest.SILENT
                ? Measures.SILENT_TEST
                : "neither variance nor standard error nor both limits nor a p value are reported,"
                    + " so it has no weight");
  }

  @Override
  public boolean limitsOffCentre(GivenEffect study) {
    return study.offCentre();
  }

  @Override
  public FromTest fromTest(GivenEffect study) {
    return study.fromTest();
  }

  @Override
  public BackTransform shown(List<GivenEffect> pooled) {
    return ratio ? BackTransform.EXPONENTIAL : BackTransform.NONE;
  }
}
