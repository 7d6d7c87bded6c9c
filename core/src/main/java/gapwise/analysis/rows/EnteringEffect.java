package gapwise.analysis.rows;

import gapwise.effect.EmptyCells;
import gapwise.effect.GivenEffect;
import gapwise.effect.Measure;
import gapwise.effect.MeasureOptions;
import gapwise.effect.Measures;
import gapwise.effect.Reported;
import gapwise.effect.SpreadConversion.FromTest;
import gapwise.evidence.ReportedValue;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * With which estimate and standard error a printed effect would enter a plan of reported effects,
 * by the measure that reads the rows of one.
 *
 * @param estimate on the analysis scale, the log of a ratio; empty where it cannot be taken
 * @param standardError on the same scale; empty where nothing printed tells it
 * @param fromPValue whether the standard error comes from the p value
 * @param offCentre whether the limits lie about another middle than the estimate
 */
public record EnteringEffect(
    OptionalDouble estimate, OptionalDouble standardError, boolean fromPValue, boolean offCentre) {
  /** The level of the limits that the template asks for. */
  private static final double LIMITS = 0.95;

  /**
   * What a plan would take.
   *
   * @param ratio whether the effect is a ratio
   */
  public static EnteringEffect of(ReportedValue.Effect effect, boolean ratio) {
    Measure<GivenEffect> measure =
        Measures.reported(
            new MeasureOptions(
                "raw",
                EmptyCells.USUAL,
                OptionalDouble.empty(),
                List.of(),
                true,
                false,
                ratio,
                LIMITS,
                OptionalDouble.empty(),
                MeasureOptions.Pooling.INVERSE_VARIANCE));
    Optional<GivenEffect> given = measure.read(new Printed(effect));
    OptionalDouble variance = given.map(GivenEffect::variance).orElse(OptionalDouble.empty());
    return new EnteringEffect(
        given.map(one -> OptionalDouble.of(one.estimate())).orElse(OptionalDouble.empty()),
        variance.isPresent() && variance.getAsDouble() > 0
            ? OptionalDouble.of(Math.sqrt(variance.getAsDouble()))
            : OptionalDouble.empty(),
        given.filter(one -> measure.fromTest(one) == FromTest.P_VALUE_OF_EFFECT).isPresent(),
        given.filter(measure::limitsOffCentre).isPresent());
  }

  /** The printed numbers by role. */
  private record Printed(ReportedValue.Effect effect) implements Reported {
    @Override
    public OptionalDouble number(String role) {
      Map<String, OptionalDouble> numbers = new HashMap<>();
      numbers.put("effect", OptionalDouble.of(effect.estimate()));
      numbers.put("lower", effect.lower());
      numbers.put("upper", effect.upper());
      numbers.put("pValue", effect.pValue());
      return numbers.getOrDefault(role, OptionalDouble.empty());
    }

    @Override
    public void wrong(String role, String code, String message) {}

    @Override
    public void missing(String role) {}

    @Override
    public boolean isBound(String role) {
      return false;
    }
  }
}
