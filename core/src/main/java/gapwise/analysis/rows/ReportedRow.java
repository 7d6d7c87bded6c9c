package gapwise.analysis.rows;

import gapwise.analysis.result.Result;
import gapwise.budget.Work;
import gapwise.effect.Reported;
import gapwise.problem.Problems;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A row read by role, collecting what is wrong with it and what it lacks. */
public final class ReportedRow implements Reported {
  private final Columns columns;
  private final DataTable.Row row;
  private final Problems problems;
  private final List<String> missing = new ArrayList<>();
  private boolean wrong;

  public ReportedRow(Columns columns, DataTable.Row row, Problems problems) {
    Work.check();
    this.columns = columns;
    this.row = row;
    this.problems = problems;
  }

  @Override
  public OptionalDouble number(String role) {
    Optional<RowValue> cell = cell(role);
    if (cell.isEmpty()) {
      return OptionalDouble.empty();
    }
    RowValue value = cell.get();
    OptionalDouble number = value.number();
    if (number.isEmpty()) {
      boolean bound = isBound(value);
      wrong(
          role,
          "not-a-number",
          bound
              ? "found '"
                  + value.text()
                  + "', a bound and not a value, from which nothing is worked out; give the value"
                  + " itself, or leave the cell empty"
              : "found '"
                  + value.text()
                  + "', expected a number with a point before the fraction, or nothing if it is not"
                  + " reported");
    }
    return number;
  }

  @Override
  public boolean isBound(String role) {
    return cell(role).filter(ReportedRow::isBound).isPresent();
  }

  private static boolean isBound(RowValue value) {
    return !value.text().isEmpty() && "<>≤≥".indexOf(value.text().charAt(0)) >= 0;
  }

  private Optional<RowValue> cell(String role) {
    return columns.has(role)
        ? Optional.ofNullable(row.cells().get(columns.column(role)))
        : Optional.empty();
  }

  @Override
  public void wrong(String role, String code, String message) {
    wrong = true;
    problems.add(
        row.place() + ", column " + columns.byRole().getOrDefault(role, role), code, message);
  }

  @Override
  public void missing(String role) {
    if (!wrong) {
      missing.add(columns.byRole().getOrDefault(role, role));
    }
  }

  /** What the row lacks, as a warning; empty if it is whole or wrong. */
  public Optional<Result.Warning> lacking() {
    return missing.isEmpty()
        ? Optional.empty()
        : Optional.of(
            row.warning(
                "missing-value",
                row.place()
                    + " has no value in "
                    + String.join(", ", missing)
                    + ", so it cannot enter",
                columns.label(row)));
  }
}
