package gapwise.analysis.rows;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.effect.FiveNumbers;
import gapwise.effect.SpreadConversion;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.TestedMeans;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.Conversions;
import gapwise.selection.SelectedRow;
import gapwise.selection.SpreadBasis;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The cells of a quantity by role, in the unit in which its outcome is compared. Where the question
 * allows it, a mean without a standard deviation gets one from what stands beside it, and a median
 * travels with what stands beside it to be carried into a mean; a number of patients that the value
 * itself lacks is taken from its arm. Each comes with a warning.
 */
record QuantityCells(
    SelectedRow row, Outcome outcome, Conversions conversions, QuantitySummary reported) {

  void fill(Map<String, RowValue> cells, List<Result.Warning> warnings) {
    QuantitySummary summary = reported.in(outcome.unit().orElse(reported.unit()));
    OptionalInt patients = patients(summary, warnings);
    patients.ifPresent(n -> cells.put("n", new RowValue.Number(n)));
    put(cells, "mean", summary.mean());
    put(cells, "sd", deviation(summary, patients, warnings));
    if (summary.mean().isEmpty() && conversions == Conversions.ALL) {
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
      warnings.add(ofTheArm(row, speaksOf.getAsInt()));
    }
    return speaksOf;
  }

  /** Said where patients that a value does not name are taken from its arm. */
  static Result.Warning ofTheArm(SelectedRow row, int patients) {
    return about(
        row,
        "patients-of-the-arm-taken",
        row.label()
            + " does not say of how many patients the value is; the "
            + patients
            + " of the arm are taken, though some may not have been measured");
  }

  private OptionalDouble deviation(
      QuantitySummary summary, OptionalInt patients, List<Result.Warning> warnings) {
    SpreadBasis basis = SpreadBasis.of(row, summary, conversions);
    if (basis == SpreadBasis.NONE && summary.unstatedSpread().isPresent()) {
      warnings.add(told("spread-not-stated", "analysis.spread-not-stated"));
    }
    if (summary.mean().isEmpty()) {
      medianWarning(summary).ifPresent(warnings::add);
    }
    if (summary.mean().isEmpty() || !basis.isWorkedOut() || patients.isEmpty()) {
      return summary.standardDeviation();
    }
    int n = patients.getAsInt();
    if (basis == SpreadBasis.TEST) {
      return fromTest(SpreadBasis.tested(row, summary.unit()).orElseThrow(), warnings);
    }
    OptionalDouble deviation = workedOut(basis, summary, n);
    if (deviation.isPresent()) {
      warnings.add(told(basis));
    }
    if (deviation.isPresent() && looksSkewed(basis, summary, n)) {
      warnings.add(told("mean-looks-skewed", "analysis.mean-looks-skewed"));
    }
    return deviation;
  }

  /** Why a median cannot enter: nothing is to be worked out, or nothing stands beside it. */
  private Optional<Result.Warning> medianWarning(QuantitySummary summary) {
    if (conversions == Conversions.NONE) {
      return Optional.of(told("median-not-converted", "analysis.median-not-converted"));
    }
    boolean quartiles = summary.lowerQuartile().isPresent() && summary.upperQuartile().isPresent();
    boolean range = summary.minimum().isPresent() && summary.maximum().isPresent();
    return quartiles || range
        ? Optional.empty()
        : Optional.of(told("median-alone", "analysis.median-alone"));
  }

  /** By the t statistic where it is printed, which is less rounded; else by the p value. */
  private OptionalDouble fromTest(TestedMeans means, List<Result.Warning> warnings) {
    OptionalDouble t = means.test().t();
    OptionalDouble deviation =
        t.isPresent()
            ? SpreadConversion.fromTStatistic(
                means.difference(), t.getAsDouble(), means.patients(), means.others())
            : SpreadConversion.fromPValue(
                means.difference(),
                means.test().pValue().orElseThrow(),
                means.patients(),
                means.others());
    if (deviation.isPresent()) {
      warnings.add(
          t.isPresent()
              ? told("converted-from-t-statistic", "analysis.spread-from-t-statistic")
              : told("converted-from-p-value", "analysis.spread-from-p-value"));
    }
    return deviation;
  }

  private static OptionalDouble workedOut(SpreadBasis basis, QuantitySummary s, int n) {
    return switch (basis) {
      case STANDARD_ERROR ->
          OptionalDouble.of(SpreadConversion.fromStandardError(s.standardError().getAsDouble(), n));
      case LIMITS ->
          SpreadConversion.fromLimits(
              s.lowerLimit().getAsDouble(), s.upperLimit().getAsDouble(), n);
      case QUARTILES ->
          SpreadConversion.fromQuartiles(
              s.lowerQuartile().getAsDouble(), s.upperQuartile().getAsDouble(), n);
      case RANGE ->
          SpreadConversion.fromRange(s.minimum().getAsDouble(), s.maximum().getAsDouble(), n);
      case QUARTILES_AND_RANGE -> {
        OptionalDouble one = workedOut(SpreadBasis.QUARTILES, s, n);
        OptionalDouble other = workedOut(SpreadBasis.RANGE, s, n);
        yield one.isPresent() && other.isPresent()
            ? OptionalDouble.of((one.getAsDouble() + other.getAsDouble()) / 2)
            : OptionalDouble.empty();
      }
      case PRINTED, TEST, NONE -> OptionalDouble.empty();
    };
  }

  /**
   * By the median where it is printed too, for which the sharper test was made; else by the mean.
   */
  private static boolean looksSkewed(SpreadBasis basis, QuantitySummary s, int n) {
    boolean both = basis == SpreadBasis.QUARTILES_AND_RANGE;
    boolean range = both || basis == SpreadBasis.RANGE;
    boolean quartiles = both || basis == SpreadBasis.QUARTILES;
    if (!range && !quartiles) {
      return false;
    }
    OptionalDouble none = OptionalDouble.empty();
    if (s.median().isPresent()) {
      return new FiveNumbers(
              n,
              range ? s.minimum() : none,
              quartiles ? s.lowerQuartile() : none,
              s.median().getAsDouble(),
              quartiles ? s.upperQuartile() : none,
              range ? s.maximum() : none)
          .looksSkewed();
    }
    double mean = s.mean().getAsDouble();
    return range
        ? SpreadConversion.rangeLooksSkewed(
            s.minimum().getAsDouble(), mean, s.maximum().getAsDouble(), n)
        : SpreadConversion.quartilesLookSkewed(
            s.lowerQuartile().getAsDouble(), mean, s.upperQuartile().getAsDouble(), n);
  }

  private Result.Warning told(SpreadBasis basis) {
    return switch (basis) {
      case STANDARD_ERROR ->
          told("converted-from-standard-error", "analysis.spread-from-standard-error");
      case LIMITS -> told("converted-from-limits", "analysis.spread-from-limits");
      case QUARTILES -> told("converted-from-quartiles", "analysis.spread-from-quartiles");
      case RANGE -> told("converted-from-range", "analysis.spread-from-range");
      case QUARTILES_AND_RANGE ->
          told("converted-from-range", "analysis.spread-from-quartiles-and-range");
      case PRINTED, TEST, NONE ->
          throw new IllegalArgumentException("nothing is worked out: " + basis);
    };
  }

  private Result.Warning told(String code, String sentence) {
    return about(row, code, say(sentence, Map.of("study", row.label())));
  }

  private static Result.Warning about(SelectedRow row, String code, String message) {
    return Result.Warning.of(code, message, row.label())
        .about(Optional.of(row.study().id()), Optional.of(row.arm().id()));
  }

  static void put(Map<String, RowValue> cells, String role, OptionalDouble value) {
    if (value.isPresent()) {
      cells.put(role, new RowValue.Number(value.getAsDouble()));
    }
  }
}
