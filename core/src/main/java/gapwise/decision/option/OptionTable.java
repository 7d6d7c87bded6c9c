package gapwise.decision.option;

import gapwise.decision.situation.Situation;
import gapwise.selection.HowRead;
import java.util.List;
import java.util.Objects;

/**
 * Methods by outcomes, in the order of the vocabulary and never by what comes out.
 *
 * @param asked what was asked
 * @param columns the outcomes that matter
 * @param options the methods, amputation always among them
 */
public record OptionTable(OptionQuestion asked, List<Column> columns, List<Option> options) {
  public OptionTable {
    Objects.requireNonNull(asked, "asked");
    columns = List.copyOf(columns);
    options = List.copyOf(options);
    for (Option option : options) {
      if (option.cells().size() != columns.size()) {
        throw new IllegalArgumentException("a cell for each column, were " + option.cells());
      }
    }
  }

  /** The situation. */
  public Situation situation() {
    return asked.situation();
  }

  /** How the studies behind the numbers of options were read. */
  public HowRead howRead(List<Option> some) {
    return HowRead.ofRows(
        some.stream()
            .flatMap(option -> option.cells().stream())
            .filter(Cell.Known.class::isInstance)
            .flatMap(cell -> ((Cell.Known) cell).line().rows().stream())
            .map(one -> one.row())
            .toList());
  }

  /** What is known of a column after an option. */
  public Cell cell(Option option, Column column) {
    return option.cells().get(columns.indexOf(column));
  }
}
