package gapwise.course;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.curves.CurveResult;
import gapwise.analysis.curves.CurvesResult;
import gapwise.analysis.curves.PooledCurveResult;
import gapwise.analysis.result.Result;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Limits;
import gapwise.problem.Problem;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How the event comes after one method.
 *
 * @param method the method
 * @param curves those that enter, at least one
 * @param horizon months to which the restricted mean reaches
 * @param plan that gives the result
 * @param outcome what came of it
 */
public record MethodCourse(
    Method method, List<CurveTaken> curves, int horizon, ObjectNode plan, PlanOutcome outcome) {
  /** Half the width of a 95 % interval in standard errors, by the normal law. */
  private static final double NORMAL = 1.959964;

  public MethodCourse {
    Objects.requireNonNull(method, "method");
    curves = List.copyOf(curves);
    Objects.requireNonNull(plan, "plan");
    Objects.requireNonNull(outcome, "outcome");
    if (curves.isEmpty()) {
      throw new IllegalArgumentException("a method needs a curve");
    }
  }

  /** The result; empty where the curves contradict themselves. */
  public Optional<Result> result() {
    return outcome instanceof PlanOutcome.Done done ? Optional.of(done.result()) : Optional.empty();
  }

  /** What is wrong with the curves, where nothing came of them. */
  public List<Problem> problems() {
    return outcome instanceof PlanOutcome.Wrong wrong ? wrong.problems() : List.of();
  }

  private Optional<CurvesResult> made() {
    return result().flatMap(result -> result.part(CurvesResult.class));
  }

  /** The pooled curve; empty where there is one curve only, or nothing could be pooled. */
  public Optional<PooledCurveResult> pooled() {
    return made()
        .flatMap(CurvesResult::pooledCurves)
        .flatMap(pooled -> pooled.stream().findFirst())
        .filter(pooled -> !pooled.times().isEmpty());
  }

  /** The one curve that there is; empty where there are several. */
  public Optional<CurveResult> alone() {
    return made().map(CurvesResult::curves).filter(all -> all.size() == 1).map(all -> all.get(0));
  }

  /** Patients at the start of all curves. */
  public int patients() {
    return curves.stream().mapToInt(CurveTaken::patients).sum();
  }

  /** Studies that the curves are of. */
  public int studies() {
    return (int) curves.stream().map(taken -> taken.row().study().id()).distinct().count();
  }

  /** The share with the event by a month; empty where no curve, or no two, are followed so long. */
  public Optional<ShareBy> by(int month) {
    return pooled().isPresent() ? pooledBy(month) : alone().flatMap(one -> aloneBy(one, month));
  }

  private Optional<ShareBy> pooledBy(int month) {
    return pooled().orElseThrow().times().stream()
        .filter(at -> at.time() == month)
        .findFirst()
        .map(
            at ->
                new ShareBy(
                    month,
                    1 - at.survival(),
                    turned(at.lower(), at.upper()),
                    at.studies(),
                    at.atRisk()));
  }

  private static Optional<ShareBy> aloneBy(CurveResult one, int month) {
    int followed = (int) one.individuals().stream().filter(each -> each.time() >= month).count();
    return one.survivalAt().stream()
        .filter(at -> at.time() == month && at.survival().isPresent())
        .findFirst()
        .map(
            at ->
                new ShareBy(
                    month,
                    1 - at.survival().getAsDouble(),
                    turned(at.lower(), at.upper()),
                    1,
                    followed));
  }

  private static Optional<Limits> turned(OptionalDouble lower, OptionalDouble upper) {
    return lower.isPresent() && upper.isPresent()
        ? Optional.of(new Limits(1 - upper.getAsDouble(), 1 - lower.getAsDouble()))
        : Optional.empty();
  }

  /** The restricted mean; empty where no curve, or no two, are followed to the horizon. */
  public Optional<WithinMonths> restrictedMean() {
    if (curves.size() > 1) {
      return made()
          .flatMap(CurvesResult::pooledCurves)
          .flatMap(pooled -> pooled.stream().findFirst())
          .flatMap(PooledCurveResult::restrictedMean)
          .filter(mean -> mean.studies() > 1)
          .flatMap(
              mean ->
                  mean.summary()
                      .map(
                          summary ->
                              new WithinMonths(
                                  summary.shown().estimate(),
                                  limits(summary.shown().lower(), summary.shown().upper()),
                                  mean.studies())));
    }
    return alone()
        .filter(one -> one.restrictedMean().isPresent())
        .map(one -> alone(one.restrictedMean().getAsDouble(), one.restrictedMeanStandardError()));
  }

  private WithinMonths alone(double mean, OptionalDouble error) {
    double half = NORMAL * error.orElse(0);
    return new WithinMonths(
        mean, limits(Math.max(0, mean - half), Math.min(horizon, mean + half)), 1);
  }

  private static Optional<Limits> limits(double lower, double upper) {
    return lower < upper ? Optional.of(new Limits(lower, upper)) : Optional.empty();
  }
}
