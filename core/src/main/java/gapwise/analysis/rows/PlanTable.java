package gapwise.analysis.rows;

import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.table.Cell;
import gapwise.table.Header;
import gapwise.table.Row;
import gapwise.table.SheetConsumer;
import gapwise.table.TableFile;
import gapwise.table.TableReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The table that a plan names, read by the same reader as the templates. */
final class PlanTable implements SheetConsumer {
  private static final String ADVICE =
      "Take rows and columns out that the plan does not use, or raise the limit with --limit.";

  private final Set<String> columns = new LinkedHashSet<>();
  private final List<DataTable.Row> rows = new ArrayList<>();
  private final String where;
  private long values;

  private PlanTable(String where) {
    this.where = where;
  }

  /**
   * Reads a table.
   *
   * @param name as the plan gives it, for messages
   * @param where the field of the plan that names it
   * @throws WrongInputException with everything that is wrong with the file
   */
  static DataTable read(Path file, String name, String where) {
    byte[] bytes = bytes(file, name, where);
    PlanTable table = new PlanTable(where);
    Problems problems = new Problems();
    new TableReader().read(List.of(TableFile.of(name, bytes)), problems, table);
    if (table.rows.isEmpty() && problems.isEmpty()) {
      problems.add(where, "no-rows", "the file '" + name + "' has no row below its column names");
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return new DataTable(table.columns, table.rows, List.of(), Hash.sha256(bytes));
  }

  private static byte[] bytes(Path file, String name, String where) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  where,
                  "file-not-readable",
                  "the file '"
                      + name
                      + "' cannot be read beside the plan; put it there or correct its name")));
    }
  }

  /** Of a workbook the first sheet is the table. */
  @Override
  public boolean wants(String sheet) {
    return columns.isEmpty();
  }

  @Override
  public void begin(Header header) {
    Work.require(Limit.COLUMNS, header.names().size(), where, ADVICE);
    columns.addAll(header.names());
  }

  @Override
  public void row(Row row) {
    Map<String, RowValue> cells = new LinkedHashMap<>();
    for (Cell cell : row.cells()) {
      if (!cell.isBlank()) {
        Work.require(
            Limit.LETTERS,
            cell.stripped().length(),
            where + ", row " + (rows.size() + 1) + ", column " + cell.column().name(),
            "Shorten the text.");
        cells.put(cell.column().name(), new RowValue.Text(cell.stripped()));
      }
    }
    values += cells.size();
    Work.check();
    Work.require(Limit.CELLS, values, where, ADVICE);
    Work.require(Limit.ROWS, rows.size() + 1L, where, ADVICE);
    rows.add(new DataTable.Row(rows.size() + 1, cells));
  }
}
