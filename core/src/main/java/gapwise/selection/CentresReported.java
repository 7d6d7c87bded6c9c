package gapwise.selection;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What all series report as their mean or median, with or without a spread: those that cannot be
 * pooled for want of one still tell where results lie. A description of what is printed, not an
 * estimate: it has no interval.
 *
 * @param unit in which the outcome is compared, as it is printed
 * @param means series that give a mean
 * @param medians series that give a median alone
 * @param centres lowest, quartiles and highest of these means and medians, each series once
 * @param weighted their mean weighted by patients; empty where no series says of how many
 * @param patients of the series that say of how many
 */
public record CentresReported(
    String unit,
    int means,
    int medians,
    QuantitySummary centres,
    OptionalDouble weighted,
    int patients) {

  /** From the rows of a selection, or of one method; empty where no row gives a mean or median. */
  public static Optional<CentresReported> of(Outcome outcome, List<SelectedRow> rows) {
    List<Double> centres = new ArrayList<>();
    int means = 0;
    int patients = 0;
    double sum = 0;
    for (SelectedRow row : rows) {
      OptionalDouble centre = centre(outcome, row);
      if (centre.isPresent()) {
        centres.add(centre.getAsDouble());
        means += isMean(row) ? 1 : 0;
        OptionalInt speaksOf = row.speaksOf();
        patients += speaksOf.orElse(0);
        sum += speaksOf.orElse(0) * centre.getAsDouble();
      }
    }
    if (centres.isEmpty() || outcome.unit().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new CentresReported(
            outcome.unit().get().symbol(),
            means,
            centres.size() - means,
            QuantitySummary.of(outcome.unit().get(), centres),
            patients == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum / patients),
            patients));
  }

  /** The mean of a row, else its median, in the unit of the outcome; empty if it gives neither. */
  public static OptionalDouble centre(Outcome outcome, SelectedRow row) {
    if (!(row.value() instanceof ReportedValue.Quantity quantity)) {
      return OptionalDouble.empty();
    }
    QuantitySummary summary = quantity.summary();
    return summary.in(outcome.unit().orElse(summary.unit())).centre();
  }

  private static boolean isMean(SelectedRow row) {
    return row.value() instanceof ReportedValue.Quantity quantity
        && quantity.summary().mean().isPresent();
  }

  /** How many series. */
  public int series() {
    return means + medians;
  }
}
