package gapwise.analysis.network;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.effect.BackTransform;
import gapwise.numeric.ReferenceDistribution;
import java.util.Optional;
import java.util.OptionalDouble;

/** The entry of one row of a network in the list of rows. */
final class NetworkRow {
  private NetworkRow() {}

  /** A row without an effect of its own: the first arm of a study, or one that cannot enter. */
  static Result.Study without(DataTable.Row row, String label) {
    return entry(
        row,
        label,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty());
  }

  /** A row whose effect is known but not how certain it is. */
  static Result.Study withoutVariance(DataTable.Row row, String label, double effect) {
    OptionalDouble none = OptionalDouble.empty();
    return entry(row, label, OptionalDouble.of(effect), none, none, none, none, Optional.empty());
  }

  /** A row with an effect; without limits where these come to one value. */
  static Result.Study of(
      DataTable.Row row,
      String label,
      double effect,
      double variance,
      double level,
      BackTransform back) {
    double error = Math.sqrt(variance);
    double half = ReferenceDistribution.normal().multiplier(level) * error;
    boolean width = effect - half < effect + half;
    return entry(
        row,
        label,
        OptionalDouble.of(effect),
        OptionalDouble.of(variance),
        OptionalDouble.of(error),
        width ? OptionalDouble.of(effect - half) : OptionalDouble.empty(),
        width ? OptionalDouble.of(effect + half) : OptionalDouble.empty(),
        width
            ? Optional.of(
                new Result.Estimate(
                    back.apply(effect), back.apply(effect - half), back.apply(effect + half)))
            : Optional.empty());
  }

  private static Result.Study entry(
      DataTable.Row row,
      String label,
      OptionalDouble effect,
      OptionalDouble variance,
      OptionalDouble error,
      OptionalDouble lower,
      OptionalDouble upper,
      Optional<Result.Estimate> shown) {
    OptionalDouble none = OptionalDouble.empty();
    return new Result.Study(
        label,
        row.studyId(),
        row.armId(),
        effect,
        variance,
        error,
        lower,
        upper,
        none,
        shown,
        none,
        none);
  }
}
