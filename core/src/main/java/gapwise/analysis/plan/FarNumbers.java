package gapwise.analysis.plan;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.rows.DataTable;
import gapwise.problem.Problem;
import java.util.Iterator;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The number of a plan or its data that lies farthest from 1 in powers of ten, should one lie so
 * far that sums of squares and their quotients may leave the range of a double or lose all digits.
 * Formulas tell most such numbers themselves; this answers for those that none of them foresaw.
 */
public final class FarNumbers {
  /** No unit of this trade needs more powers of ten, and from here on fourth powers cost digits. */
  private static final double FAR = 9;

  /** Numbers that are names and enter no formula. */
  private static final Set<String> NAMES = Set.of("seed");

  private double farthest = FAR;
  private Optional<Problem> found = Optional.empty();

  private FarNumbers() {}

  /** A problem that names it; empty if all numbers are of a usual size. */
  public static Optional<Problem> in(Plan plan, DataTable table) {
    FarNumbers search = new FarNumbers();
    search.rows(table, "");
    table.beside().ifPresent(beside -> search.rows(beside, "second table, "));
    for (Iterator<Map.Entry<String, JsonNode>> fields = plan.head().json().fields();
        fields.hasNext(); ) {
      Map.Entry<String, JsonNode> field = fields.next();
      if (!Filling.DATA.contains(field.getKey())) {
        search.settings(field.getValue(), field.getKey());
      }
    }
    return search.found;
  }

  private void rows(DataTable table, String which) {
    for (DataTable.Row row : table.rows()) {
      row.cells()
          .forEach(
              (column, value) -> {
                OptionalDouble number = value.number();
                if (number.isPresent()) {
                  take(number.getAsDouble(), which + row.place() + ", column " + column);
                }
              });
    }
  }

  private void settings(JsonNode setting, String where) {
    if (setting.isNumber() && !NAMES.contains(where)) {
      take(setting.asDouble(), where);
    }
    setting.fields().forEachRemaining(f -> settings(f.getValue(), where + "." + f.getKey()));
    for (int i = 0; setting.isArray() && i < setting.size(); i++) {
      settings(setting.get(i), where + "[" + i + "]");
    }
  }

  private void take(double number, String where) {
    double far = number == 0 ? 0 : Math.abs(Math.log10(Math.abs(number)));
    if (far > farthest) {
      farthest = far;
      found =
          Optional.of(
              new Problem(
                  where,
                  "number-out-of-range",
                  "found "
                      + number
                      + ", which with the other numbers of the plan cannot be reckoned with;"
                      + " correct it, or take another unit (sizes from 1e-9 to 1e9 are safe)"));
    }
  }
}
