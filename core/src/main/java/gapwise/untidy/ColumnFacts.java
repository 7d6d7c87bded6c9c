package gapwise.untidy;

import gapwise.evidence.unit.Unit;
import gapwise.printed.Printed;
import gapwise.printed.PrintedValue;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** What the cells of a column, or of the whole grid, tell together. */
final class ColumnFacts {
  private static final Pattern COMMA = Pattern.compile("\\d,\\d{1,2}(?!\\d)");
  private static final Pattern POINT = Pattern.compile("\\d\\.\\d");
  private final Logical table;
  private final Map<Integer, Boolean> times = new HashMap<>();
  private final boolean commas;

  ColumnFacts(Logical table) {
    this.table = table;
    this.commas = counted(COMMA) > counted(POINT);
  }

  private long counted(Pattern pattern) {
    return table.matrix().grid().cells().stream()
        .filter(cell -> pattern.matcher(cell.text()).find())
        .count();
  }

  /** Whether numbers have decimal commas. */
  boolean commas() {
    return commas;
  }

  /** Whether most numbers of a column have a unit of time. */
  boolean holdsTimes(Variable variable) {
    return times.computeIfAbsent(variable.at(), at -> mostAreTimes(variable));
  }

  /** Whether a column numbers its rows: 1, 2, 3 and so on. */
  boolean isRunning(Variable variable) {
    for (int entity = 0; entity < table.entities().size(); entity++) {
      String text = table.cell(entity, variable).map(GridCell::text).orElse("");
      if (!text.isEmpty() && !List.of(entity + 1 + "", entity + 1 + ".").contains(text)) {
        return false;
      }
    }
    return true;
  }

  private boolean mostAreTimes(Variable variable) {
    int seen = 0;
    int inTime = 0;
    for (int entity = 0; entity < table.entities().size(); entity++) {
      PrintedValue value =
          Printed.read(table.cell(entity, variable).map(GridCell::text).orElse(""));
      Optional<Unit> unit = Optional.empty();
      if (value instanceof PrintedValue.Amount amount) {
        unit = amount.unit();
      } else if (value instanceof PrintedValue.Summary summary) {
        unit = summary.unit();
      }
      boolean number =
          value instanceof PrintedValue.Amount || value instanceof PrintedValue.Summary;
      seen += number ? 1 : 0;
      inTime += unit.filter(one -> one.dimension() == Unit.Dimension.TIME).isPresent() ? 1 : 0;
    }
    return seen > 0 && 2 * inTime > seen;
  }
}
