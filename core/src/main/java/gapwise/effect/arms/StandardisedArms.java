package gapwise.effect.arms;

import gapwise.effect.ArmMean;
import gapwise.effect.BackTransform;
import gapwise.effect.Measure;
import gapwise.effect.Measures;
import gapwise.effect.Reported;
import gapwise.effect.StandardisedMeanDifference;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Means over one standard deviation pooled from all arms of the study, with the small-sample factor
 * of its N - arms degrees of freedom. The covariance of g_i and g_j against the first arm is 1/n_1
 * + g_i g_j/(2N), the variance 1/n_i more (Gleser and Olkin, in The Handbook of Research Synthesis,
 * 1994, chapter 22; core/src/test/reference/standardised_arms.py derives the form from exact
 * moments and shows how near it comes). The difference of two such effects then has the same form,
 * and with two arms it is {@link StandardisedMeanDifference}.
 *
 * @param exact whether the factor is exact
 * @param factorSquared whether the covariance is that of the uncorrected difference times the
 *     squared factor
 */
record StandardisedArms(boolean exact, boolean factorSquared) implements MultiArmMeasure<ArmMean> {
  @Override
  public List<Measure.Role> roles() {
    return Measures.meanRoles("");
  }

  @Override
  public Optional<ArmMean> read(Reported row) {
    return ArmMean.read(row, "");
  }

  @Override
  public Optional<Problem> unusable(ArmMean arm) {
    return arm.n() > 1 ? MultiArmMeasures.withoutSpread(arm) : Optional.empty();
  }

  @Override
  public boolean fromMedian(ArmMean arm) {
    return arm.fromMedian();
  }

  @Override
  public List<MultiArmEffect> effects(List<List<ArmMean>> studies) {
    return studies.stream().map(this::effect).toList();
  }

  private MultiArmEffect effect(List<ArmMean> arms) {
    double patients = arms.stream().mapToDouble(ArmMean::n).sum();
    double degrees = patients - arms.size();
    if (degrees < 2) {
      return MultiArmEffect.leftOut(
          "too-few-patients",
          "its patients leave no pooled standard deviation that could be corrected for its size");
    }
    double squares = 0;
    for (ArmMean arm : arms) {
      double sd = arm.sd().orElse(0);
      squares += (arm.n() - 1) * sd * sd;
    }
    double pooled = Math.sqrt(squares / degrees);
    double factor = StandardisedMeanDifference.factor(degrees, exact);
    List<Double> raw = new ArrayList<>();
    for (ArmMean arm : arms.subList(1, arms.size())) {
      raw.add((arm.mean().orElseThrow() - arms.get(0).mean().orElseThrow()) / pooled);
    }
    if (pooled == 0) {
      return MultiArmEffect.leftOut(
          "study-left-out", "its standard deviation is 0, so nothing can be divided by it");
    }
    List<Double> corrected = raw.stream().map(d -> factor * d).toList();
    return MultiArmEffect.of(
        corrected,
        factorSquared
            ? covariance(arms, raw, patients, factor * factor)
            : covariance(arms, corrected, patients, 1));
  }

  private static List<List<Double>> covariance(
      List<ArmMean> arms, List<Double> effects, double patients, double times) {
    List<List<Double>> covariance = new ArrayList<>();
    for (int i = 0; i < effects.size(); i++) {
      List<Double> row = new ArrayList<>();
      for (int j = 0; j < effects.size(); j++) {
        double sizes = 1 / arms.get(0).n() + (i == j ? 1 / arms.get(i + 1).n() : 0);
        row.add(times * (sizes + effects.get(i) * effects.get(j) / (2 * patients)));
      }
      covariance.add(row);
    }
    return covariance;
  }

  @Override
  public BackTransform shown() {
    return BackTransform.NONE;
  }
}
