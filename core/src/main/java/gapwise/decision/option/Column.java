package gapwise.decision.option;

import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Quantity;
import gapwise.selection.SelectedRow;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * One outcome that matters.
 *
 * @param aspect what matters
 * @param outcome the way in which it is counted
 * @param measure what the numbers are
 * @param others other ways in which papers count it, of which some group here does
 * @param matters the difference that would matter, in the unit of the numbers; empty for none named
 * @param rows all rows of it, of every method
 */
public record Column(
    Aspect aspect,
    Outcome outcome,
    Quantity measure,
    List<Outcome> others,
    OptionalDouble matters,
    List<SelectedRow> rows) {
  public Column {
    Objects.requireNonNull(aspect, "aspect");
    Objects.requireNonNull(outcome, "outcome");
    Objects.requireNonNull(measure, "measure");
    others = List.copyOf(others);
    Objects.requireNonNull(matters, "matters");
    rows = List.copyOf(rows);
  }
}
