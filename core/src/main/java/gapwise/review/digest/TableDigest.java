package gapwise.review.digest;

import gapwise.decision.option.Cell;
import gapwise.decision.option.Column;
import gapwise.decision.option.Option;
import gapwise.decision.option.OptionTable;
import gapwise.evidence.vocabulary.Method;
import gapwise.review.kept.DigestNumber;
import gapwise.selection.SelectedRow;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** A table of methods by outcomes in short: a number for each cell that has one. */
public final class TableDigest {
  private TableDigest() {}

  /**
   * A table.
   *
   * @param shows which of its methods are shown
   */
  public static Digested of(OptionTable table, Predicate<Method> shows) {
    List<SelectedRow> rows = new ArrayList<>();
    List<DigestNumber> numbers = new ArrayList<>();
    for (Column column : table.columns()) {
      column.rows().stream()
          .filter(row -> shows.test(row.arm().method().principal()))
          .forEach(rows::add);
    }
    for (Option option : table.options()) {
      if (shows.test(option.method())) {
        for (Column column : table.columns()) {
          if (table.cell(option, column) instanceof Cell.Known known) {
            numbers.add(number(option, column, known));
          }
        }
      }
    }
    return new Digested(rows, numbers);
  }

  private static DigestNumber number(Option option, Column column, Cell.Known known) {
    String level = known.certainty().rating().level().label();
    String letters = known.certainty().rating().letters();
    return Digested.number(
        option.method().shortLabel()
            + ", "
            + column.aspect().label()
            + " ("
            + column.outcome().label()
            + ")",
        known.line(),
        column.measure(),
        letters.isEmpty() ? level : level + ' ' + letters);
  }
}
