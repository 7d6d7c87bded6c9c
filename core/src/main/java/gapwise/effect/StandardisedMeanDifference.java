package gapwise.effect;

import gapwise.effect.SpreadConversion.FromTest;
import gapwise.effect.StudyEffect.Standardised;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.numbers.gamma.GammaRatio;

/**
 * Difference of means over the pooled standard deviation with small-sample factor J (Hedges, J Educ
 * Stat 1981;6:107), f = n1 + n2 - 2 degrees of freedom. Variance 1/n1 + 1/n2 + g^2/(2(n1+n2)), or
 * J^2 (1/n1 + 1/n2 + d^2/(2(n1+n2))).
 *
 * @param exact J by gamma functions, equation 6e; else 1 - 3/(4f - 1)
 * @param factorSquared whether the second variance is taken
 */
public record StandardisedMeanDifference(boolean exact, boolean factorSquared)
    implements TwoMeans.Measured {
  @Override
  public List<Role> roles() {
    return Measures.twoMeanRoles();
  }

  @Override
  public Optional<TwoMeans> read(Reported row) {
    return TwoMeans.read(row);
  }

  @Override
  public StudyEffect effect(TwoMeans means) {
    ArmMean i = means.intervention();
    ArmMean c = means.comparator();
    double degrees = i.n() + c.n() - 2;
    if (degrees < 2) {
      return StudyEffect.leftOut(
          "too-few-patients",
          "fewer than four patients in both groups leave no pooled standard deviation that could be"
              + " corrected for its size");
    }
    if ((i.n() > 1 && i.sd().isEmpty()) || (c.n() > 1 && c.sd().isEmpty())) {
      return StudyEffect.leftOut(
          "missing-standard-deviation",
          means.fromTest() == FromTest.SILENT
              ? Measures.SILENT_TEST
              : "a group has no standard deviation to standardise by");
    }
    double pooled = Math.sqrt((squares(i) + squares(c)) / degrees);
    double d = (i.mean().getAsDouble() - c.mean().getAsDouble()) / pooled;
    if (!Double.isFinite(d)) {
      return StudyEffect.leftOut(
          "study-left-out", "its standard deviation is 0, so nothing can be divided by it");
    }
    double j = factor(degrees, exact);
    double g = j * d;
    double sizes = 1 / i.n() + 1 / c.n();
    double both = 2 * (i.n() + c.n());
    double variance = factorSquared ? j * j * (sizes + d * d / both) : sizes + g * g / both;
    return StudyEffect.of(g, variance).with(new Standardised(OptionalDouble.of(d), j));
  }

  private static double squares(ArmMean arm) {
    double sd = arm.sd().orElse(0);
    return (arm.n() - 1) * sd * sd;
  }

  /** The small-sample factor J. */
  public static double factor(double degrees, boolean exact) {
    return exact
        ? 1 / (Math.sqrt(degrees / 2) * GammaRatio.delta((degrees - 1) / 2, 0.5))
        : 1 - 3 / (4 * degrees - 1);
  }

  @Override
  public BackTransform shown(List<TwoMeans> pooled) {
    return BackTransform.NONE;
  }
}
