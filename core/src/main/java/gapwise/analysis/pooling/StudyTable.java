package gapwise.analysis.pooling;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.budget.Work;
import gapwise.effect.BackTransform;
import gapwise.effect.Measure;
import gapwise.effect.StudyData;
import gapwise.effect.StudyEffect;
import gapwise.numeric.ReferenceDistribution;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.IntFunction;

/** The part of a result that lists the rows. */
public final class StudyTable {
  private StudyTable() {}

  /** What went in, all rows together. */
  public static <D extends StudyData> Result.Data data(Studies<D> studies, DataTable table) {
    Set<String> different = new LinkedHashSet<>();
    int arms = 0;
    for (Studies.Entry<D> entry : studies.all()) {
      different.add(entry.row().studyId().orElseGet(entry::label));
      arms += entry.data().map(StudyData::arms).orElse(0);
    }
    return new Result.Data(
        different.size(),
        arms,
        total(studies, StudyData::participants),
        total(studies, StudyData::allEvents),
        table.sha256(),
        table.reported(),
        table.extraction());
  }

  private static <D extends StudyData> OptionalDouble total(
      Studies<D> studies, Function<StudyData, OptionalDouble> part) {
    List<OptionalDouble> parts =
        studies.all().stream().flatMap(entry -> entry.data().stream()).map(part).toList();
    boolean some = parts.stream().anyMatch(OptionalDouble::isPresent);
    return some
        ? OptionalDouble.of(parts.stream().mapToDouble(one -> one.orElse(0)).sum())
        : OptionalDouble.empty();
  }

  /**
   * One entry a row.
   *
   * @param weights shares of the pooled rows; empty if nothing was pooled
   */
  public static <D extends StudyData> List<Result.Study> rows(
      Studies<D> studies, Measure<D> measure, List<Double> weights, double level) {
    return rows(
        studies,
        measure,
        pooled ->
            weights.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(weights.get(pooled)),
        level);
  }

  /**
   * One entry a row.
   *
   * @param weights the share of the study at a place among those that can be pooled; empty if it
   *     has none
   */
  public static <D extends StudyData> List<Result.Study> rows(
      Studies<D> studies, Measure<D> measure, IntFunction<OptionalDouble> weights, double level) {
    List<Result.Study> rows = new ArrayList<>();
    // Small series have the same counts again and again, and an exact interval takes a search.
    Map<D, Optional<Result.Estimate>> exact = new HashMap<>();
    int pooled = 0;
    for (Studies.Entry<D> entry : studies.all()) {
      Work.check();
      OptionalDouble weight = OptionalDouble.empty();
      if (entry.pooled()) {
        OptionalDouble share = weights.apply(pooled);
        weight = share.isEmpty() ? share : OptionalDouble.of(100 * share.getAsDouble());
        pooled++;
      }
      Optional<Result.Estimate> shown =
          entry
              .data()
              .flatMap(data -> exact.computeIfAbsent(data, one -> exact(one, measure, level)));
      rows.add(row(entry, measure, weight, shown, level));
    }
    return rows;
  }

  private static <D extends StudyData> Optional<Result.Estimate> exact(
      D data, Measure<D> measure, double level) {
    return measure
        .shownStudy(data, level)
        .map(s -> new Result.Estimate(s.estimate(), s.interval().lower(), s.interval().upper()));
  }

  private static <D extends StudyData> Result.Study row(
      Studies.Entry<D> entry,
      Measure<D> measure,
      OptionalDouble weight,
      Optional<Result.Estimate> exact,
      double level) {
    OptionalDouble none = OptionalDouble.empty();
    OptionalDouble effect = entry.effect().map(StudyEffect::estimate).orElse(none);
    OptionalDouble variance = entry.effect().map(StudyEffect::variance).orElse(none);
    OptionalDouble error = none;
    OptionalDouble lower = none;
    OptionalDouble upper = none;
    if (effect.isPresent() && variance.isPresent()) {
      double e = Math.sqrt(variance.getAsDouble());
      double half = ReferenceDistribution.normal().multiplier(level) * e;
      error = OptionalDouble.of(e);
      if (effect.getAsDouble() - half < effect.getAsDouble() + half) {
        lower = OptionalDouble.of(effect.getAsDouble() - half);
        upper = OptionalDouble.of(effect.getAsDouble() + half);
      }
    }
    Optional<StudyEffect.Standardised> details = entry.effect().flatMap(StudyEffect::standardised);
    return new Result.Study(
        entry.label(),
        entry.row().studyId(),
        entry.row().armId(),
        effect,
        variance,
        error,
        lower,
        upper,
        weight,
        exact.isPresent() ? exact : shown(entry, measure, effect, lower, upper),
        details.map(StudyEffect.Standardised::uncorrected).orElse(none),
        details.map(d -> OptionalDouble.of(d.factor())).orElse(none));
  }

  private static <D extends StudyData> Optional<Result.Estimate> shown(
      Studies.Entry<D> entry,
      Measure<D> measure,
      OptionalDouble effect,
      OptionalDouble lower,
      OptionalDouble upper) {
    if (lower.isEmpty()) {
      return Optional.empty();
    }
    BackTransform back = measure.shown(List.of(entry.data().orElseThrow()));
    return Optional.of(
        new Result.Estimate(
            back.apply(effect.getAsDouble()),
            back.apply(lower.getAsDouble()),
            back.apply(upper.getAsDouble())));
  }
}
