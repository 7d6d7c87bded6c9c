package gapwise.decision.sheet;

import gapwise.answer.MethodLine;
import gapwise.decision.option.Cell;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import java.util.Optional;

/** The numbers of a cell. */
final class Values {
  private Values() {}

  /** The average, or the value of the one series; empty where there is neither. */
  static Optional<Estimate> of(Cell.Known known) {
    if (known.line().finding() instanceof MethodLine.Average average) {
      return Optional.of(average.value());
    }
    return known.line().finding() instanceof MethodLine.OneSeries one
        ? Optional.of(one.value())
        : Optional.empty();
  }

  /** Where a new centre may lie; empty where it cannot be told. */
  static Optional<Limits> newCentre(Cell.Known known) {
    return known.line().finding() instanceof MethodLine.Average average
        ? average.newCentre()
        : Optional.empty();
  }
}
