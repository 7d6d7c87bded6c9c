package gapwise.effect;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Mean of single groups: raw, variance s^2/n; or its log, variance s^2/(n m^2) (Hedges, Gurevitch
 * and Curtis, Ecology 1999;80:1150).
 *
 * <p>A group without a standard deviation may borrow that of the others (Furukawa, Barbui,
 * Cipriani, Brambilla and Watanabe, J Clin Epidemiol 2006;59:7): the root of the mean of their
 * variances weighted by n - 1; on the log scale of their squared coefficients of variation, which
 * are the variances of a patient's value over the mean.
 *
 * @param log whether the log of the mean is pooled; means must then be above 0
 * @param borrowing whether groups without a standard deviation borrow one
 * @param correlation of values before and after, where a row names none
 */
record Mean(boolean log, boolean borrowing, OptionalDouble correlation)
    implements Measure<ArmMean> {
  @Override
  public List<Role> roles() {
    return log ? Measures.meanRoles("") : Measures.meanOrChangeRoles("");
  }

  @Override
  public Optional<ArmMean> read(Reported row) {
    return log ? ArmMean.read(row, "") : ArmMean.readOrChange(row, "", correlation);
  }

  @Override
  public List<StudyEffect> effects(List<ArmMean> studies) {
    OptionalDouble spread = borrowing ? pooledSpread(studies) : OptionalDouble.empty();
    return studies.stream().map(arm -> effect(spread.isEmpty() ? arm : lent(arm, spread))).toList();
  }

  /** On the raw scale a standard deviation, on the log scale a coefficient of variation. */
  private OptionalDouble pooledSpread(List<ArmMean> studies) {
    return ArmMean.pooledDeviation(
        log
            ? studies.stream()
                .filter(arm -> arm.sd().isPresent() && arm.mean().getAsDouble() > 0)
                .map(arm -> arm.withSd(arm.sd().getAsDouble() / arm.mean().getAsDouble()))
                .toList()
            : studies);
  }

  private ArmMean lent(ArmMean arm, OptionalDouble spread) {
    double mean = arm.mean().getAsDouble();
    if (arm.sd().isPresent() || (log && mean <= 0)) {
      return arm;
    }
    double sd = log ? spread.getAsDouble() * mean : spread.getAsDouble();
    return arm.withSd(sd);
  }

  @Override
  public Optional<Measure<ArmMean>> withBorrowedSpread() {
    return Optional.of(new Mean(log, true, correlation));
  }

  private StudyEffect effect(ArmMean arm) {
    double mean = arm.mean().getAsDouble();
    if (log && mean <= 0) {
      return StudyEffect.leftOut(
          "mean-not-positive", "its mean is " + mean + " and a log needs one above 0");
    }
    double estimate = log ? Math.log(mean) : mean;
    OptionalDouble squared = arm.squaredStandardError();
    if (squared.isEmpty()) {
      return Measures.withoutSpread(estimate, arm);
    }
    double variance = squared.getAsDouble();
    return StudyEffect.of(estimate, log ? variance / mean / mean : variance);
  }

  @Override
  public boolean fromMedian(ArmMean study) {
    return study.fromMedian();
  }

  @Override
  public boolean looksSkewed(ArmMean study) {
    return study.looksSkewed();
  }

  @Override
  public BackTransform shown(List<ArmMean> pooled) {
    return log ? BackTransform.EXPONENTIAL : BackTransform.NONE;
  }
}
