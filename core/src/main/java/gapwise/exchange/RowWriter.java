package gapwise.exchange;

import gapwise.evidence.vocabulary.Missing;
import gapwise.exchange.form.CellForm;
import gapwise.exchange.form.Guard;
import gapwise.exchange.form.MissingWords;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** One row being written: the texts of its cells by column. */
final class RowWriter {
  /**
   * The text of a cell.
   *
   * @param text as it is written
   * @param number whether it is a number
   */
  record Written(String text, boolean number) {}

  private final Sheet sheet;
  private final Map<String, Written> cells = new LinkedHashMap<>();

  RowWriter(Sheet sheet) {
    this.sheet = sheet;
  }

  <T> void put(Field<T> field, Optional<T> value) {
    value.ifPresent(present -> put(field, present));
  }

  <T> void put(Field<T> field, T value) {
    CellForm<T> form = field.form();
    String text = form.write(value);
    boolean number = form.type() == CellForm.Type.NUMBER || form.type() == CellForm.Type.INTEGER;
    cells.put(field.name(), new Written(number ? text : Guard.write(text), number));
  }

  void put(Field<Double> field, OptionalDouble value) {
    if (value.isPresent()) {
      put(field, Double.valueOf(value.getAsDouble()));
    }
  }

  void put(Field<Integer> field, OptionalInt value) {
    if (value.isPresent()) {
      put(field, Integer.valueOf(value.getAsInt()));
    }
  }

  /** The reasons why cells hold no value. */
  void missing(Map<String, Missing> reasons) {
    reasons.forEach(
        (name, reason) ->
            sheet
                .field(name)
                .ifPresent(
                    field ->
                        cells.putIfAbsent(
                            name, new Written(MissingWords.write(reason, field.form()), false))));
  }

  Map<String, Written> cells() {
    return cells;
  }
}
