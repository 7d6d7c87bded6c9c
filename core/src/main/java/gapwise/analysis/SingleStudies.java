package gapwise.analysis;

import gapwise.effect.Interval;
import gapwise.effect.StudyData;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.diagnostics.Influence;
import gapwise.synthesis.pooling.EffectSample;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PooledMean;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/** The parts of a result that tell what single studies do to the whole. */
final class SingleStudies {
  /** Both parts take a fit for each study, so their time grows with the square of their number. */
  private static final int MOST_STUDIES = 1000;

  private SingleStudies() {}

  /** The influence of each study; empty if it is not asked for or cannot be told. */
  static <D extends StudyData> Optional<InfluenceResult> influence(
      SynthesisPlan plan, Studies<D> studies, List<Result.Warning> warnings) {
    int size = studies.pooled().size();
    if (!plan.json().path("influence").asBoolean() || size < 2 || tooMany(size, warnings)) {
      return Optional.empty();
    }
    EffectSample sample = studies.sample();
    List<String> labels = studies.pooled().stream().map(Studies.Entry::label).toList();
    Influence influence = Influence.of(sample, plan.settings());
    List<InfluenceResult.Omitted> omitted = new ArrayList<>();
    List<InfluenceResult.Diagnostic> diagnostics = new ArrayList<>();
    List<InfluenceResult.Contribution> contributions = new ArrayList<>();
    boolean random = plan.settings().estimator().isPresent();
    for (int i = 0; i < size; i++) {
      Pooled rest = influence.withoutEach().get(i);
      omitted.add(
          new InfluenceResult.Omitted(
              labels.get(i),
              of(rest, PooledMean::estimate),
              of(rest, PooledMean::standardError),
              limit(rest, Interval::lower),
              limit(rest, Interval::upper),
              tauSquared(rest, random),
              rest.heterogeneity().q()));
    }
    for (int i = 0; i < influence.diagnostics().size(); i++) {
      Influence.Diagnostic d = influence.diagnostics().get(i);
      diagnostics.add(
          new InfluenceResult.Diagnostic(
              labels.get(i),
              d.studentisedResidual(),
              d.dffits(),
              d.cooksDistance(),
              d.covarianceRatio(),
              d.hat()));
    }
    for (int i = 0; i < influence.contributions().size(); i++) {
      Influence.Contribution c = influence.contributions().get(i);
      contributions.add(new InfluenceResult.Contribution(labels.get(i), c.toQ(), c.toEstimate()));
    }
    return Optional.of(new InfluenceResult(omitted, diagnostics, contributions));
  }

  /** The pooled value as studies are added in the order of a column. */
  static <D extends StudyData> Optional<List<InfluenceResult.Cumulative>> cumulative(
      SynthesisPlan plan,
      Studies<D> studies,
      DataTable table,
      Pooler pooler,
      List<Result.Warning> warnings) {
    String column = plan.json().path("cumulativeBy").asText();
    if (column.isEmpty() || tooMany(pooler.size(), warnings)) {
      return Optional.empty();
    }
    if (!table.columns().contains(column)) {
      Problems problems = new Problems();
      problems.add(
          "cumulativeBy",
          "unknown-column",
          "there is no column '" + column + "'; the data have " + table.columns());
      throw new WrongInputException(problems.list());
    }
    List<Studies.Entry<D>> pooled = studies.pooled();
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < pooled.size(); i++) {
      if (pooled.get(i).row().text(column).isEmpty()) {
        warnings.add(
            Result.Warning.of(
                "missing-value",
                pooled.get(i).row().place()
                    + " has no value in "
                    + column
                    + " and is left out of the cumulative order",
                pooled.get(i).label()));
      } else {
        order.add(i);
      }
    }
    order.sort(
        Comparator.comparing(i -> pooled.get(i).row().text(column), byValue(pooled, column)));
    boolean random = plan.settings().estimator().isPresent();
    List<InfluenceResult.Cumulative> steps = new ArrayList<>();
    for (int n = 1; n <= order.size(); n++) {
      Pooled some = pooler.at(order.subList(0, n));
      steps.add(
          new InfluenceResult.Cumulative(
              pooled.get(order.get(n - 1)).label(),
              of(some, PooledMean::estimate),
              of(some, PooledMean::standardError),
              limit(some, Interval::lower),
              limit(some, Interval::upper),
              tauSquared(some, random)));
    }
    return Optional.of(steps);
  }

  /** By number if every value is one, else by text. */
  private static <D extends StudyData> Comparator<String> byValue(
      List<Studies.Entry<D>> pooled, String column) {
    boolean numbers =
        pooled.stream()
            .map(entry -> entry.row().text(column))
            .filter(text -> !text.isEmpty())
            .allMatch(text -> ReportedRow.parse(text).isPresent());
    return numbers
        ? Comparator.comparingDouble(text -> ReportedRow.parse(text).orElseThrow())
        : Comparator.naturalOrder();
  }

  private static boolean tooMany(int size, List<Result.Warning> warnings) {
    if (size > MOST_STUDIES) {
      warnings.add(
          Result.Warning.of(
              "too-many-studies",
              "influence and cumulative order are told for up to "
                  + MOST_STUDIES
                  + " studies, here are "
                  + size));
    }
    return size > MOST_STUDIES;
  }

  private static OptionalDouble of(Pooled pooled, ToDoubleFunction<PooledMean> part) {
    return pooled.mean().isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(part.applyAsDouble(pooled.mean().get()));
  }

  private static OptionalDouble limit(Pooled pooled, ToDoubleFunction<Interval> which) {
    return of(pooled, mean -> which.applyAsDouble(mean.interval()));
  }

  /** One study alone has a tau squared of 0. */
  private static OptionalDouble tauSquared(Pooled pooled, boolean random) {
    OptionalDouble estimated = pooled.heterogeneity().tauSquared();
    boolean set = random && estimated.isEmpty() && pooled.weights().size() == 1;
    return set ? OptionalDouble.of(0) : estimated;
  }
}
