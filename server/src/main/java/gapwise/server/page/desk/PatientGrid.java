package gapwise.server.page.desk;

import gapwise.desk.Draft;
import gapwise.desk.DraftRow;
import gapwise.desk.FormColumns;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import java.util.List;

/**
 * Patients described one by one: a line each.
 *
 * @param columns what is typed of each
 * @param lines one for each patient
 * @param further columns that may be added
 */
public record PatientGrid(
    List<TemplateColumn> columns, List<Line> lines, List<TemplateColumn> further) {
  public PatientGrid {
    columns = List.copyOf(columns);
    lines = List.copyOf(lines);
    further = List.copyOf(further);
  }

  /**
   * One patient.
   *
   * @param row number of the row
   * @param name what the paper calls the patient
   * @param cells one for each column
   */
  public record Line(int row, String name, List<FormCell> cells) {
    public Line {
      cells = List.copyOf(cells);
    }
  }

  static PatientGrid of(Draft draft) {
    List<DraftRow> rows = draft.rows(Template.PATIENTS);
    List<TemplateColumn> columns = FormColumns.shown(draft, Template.PATIENTS, rows);
    return new PatientGrid(
        columns,
        rows.stream().map(row -> line(row, columns)).toList(),
        FormColumns.further(draft, Template.PATIENTS, rows));
  }

  private static Line line(DraftRow row, List<TemplateColumn> columns) {
    String name = row.text(Template.PATIENT);
    return new Line(
        row.number(),
        name,
        columns.stream().map(column -> FormCell.of(row, column, name)).toList());
  }
}
