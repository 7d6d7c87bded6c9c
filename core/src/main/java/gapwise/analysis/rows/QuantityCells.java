package gapwise.analysis.rows;

import gapwise.analysis.result.Result;
import gapwise.effect.SpreadConversion;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.SelectedRow;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The cells of a quantity by role, in the unit in which its outcome is compared. A standard error
 * or an interval of the mean is carried into a standard deviation, and a number of patients that
 * the value itself lacks is taken from its arm, each with a warning.
 */
record QuantityCells(SelectedRow row, Outcome outcome, QuantitySummary reported) {

  void fill(Map<String, RowValue> cells, List<Result.Warning> warnings) {
    QuantitySummary summary = reported.in(outcome.unit().orElse(reported.unit()));
    OptionalInt patients = patients(summary, warnings);
    patients.ifPresent(n -> cells.put("n", new RowValue.Number(n)));
    put(cells, "mean", summary.mean());
    put(cells, "sd", deviation(summary, patients, warnings));
    if (summary.mean().isEmpty()) {
      put(cells, "median", summary.median());
      put(cells, "q1", summary.lowerQuartile());
      put(cells, "q3", summary.upperQuartile());
      put(cells, "min", summary.minimum());
      put(cells, "max", summary.maximum());
    }
  }

  private OptionalInt patients(QuantitySummary summary, List<Result.Warning> warnings) {
    if (summary.n().isPresent()) {
      return summary.n();
    }
    OptionalInt speaksOf = row.speaksOf();
    if (speaksOf.isPresent()) {
      warnings.add(
          Result.Warning.of(
              "patients-of-the-arm-taken",
              row.label()
                  + " does not say of how many patients the value is; the "
                  + speaksOf.getAsInt()
                  + " of the arm are taken, though some may not have been measured",
              row.label()));
    }
    return speaksOf;
  }

  private OptionalDouble deviation(
      QuantitySummary summary, OptionalInt patients, List<Result.Warning> warnings) {
    if (summary.standardDeviation().isPresent() || patients.isEmpty()) {
      return summary.standardDeviation();
    }
    int n = patients.getAsInt();
    if (summary.standardError().isPresent()) {
      warnings.add(converted("converted-from-standard-error", "the standard error of the mean"));
      return OptionalDouble.of(
          SpreadConversion.fromStandardError(summary.standardError().getAsDouble(), n));
    }
    if (summary.lowerLimit().isPresent() && summary.upperLimit().isPresent()) {
      warnings.add(converted("converted-from-limits", "the interval of the mean"));
      return SpreadConversion.fromLimits(
          summary.lowerLimit().getAsDouble(), summary.upperLimit().getAsDouble(), n);
    }
    return OptionalDouble.empty();
  }

  private Result.Warning converted(String code, String from) {
    return Result.Warning.of(
        code, row.label() + ": the standard deviation is worked out from " + from, row.label());
  }

  static void put(Map<String, RowValue> cells, String role, OptionalDouble value) {
    if (value.isPresent()) {
      cells.put(role, new RowValue.Number(value.getAsDouble()));
    }
  }
}
