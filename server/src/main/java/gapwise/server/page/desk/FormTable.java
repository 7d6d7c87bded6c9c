package gapwise.server.page.desk;

import gapwise.desk.Draft;
import gapwise.desk.DraftRow;
import gapwise.desk.FormColumns;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Rows of a draft that stand together: fields below each other, groups side by side.
 *
 * @param sheet sheet of the template
 * @param block number of the block of an outcome; 0 for others
 * @param code code of the outcome; empty text for others
 * @param title what they are of
 * @param outcome what the block is of; empty for others, and where the vocabulary lacks it
 * @param heads the rows that stand side by side
 * @param lines a line for each field
 * @param further columns that may be added
 */
public record FormTable(
    String sheet,
    int block,
    String code,
    String title,
    Optional<Outcome> outcome,
    List<Head> heads,
    List<Line> lines,
    List<TemplateColumn> further) {
  public FormTable {
    Objects.requireNonNull(sheet, "sheet");
    Objects.requireNonNull(outcome, "outcome");
    heads = List.copyOf(heads);
    lines = List.copyOf(lines);
    further = List.copyOf(further);
  }

  /**
   * One row of the draft, which is a column here.
   *
   * @param row its number
   * @param name the group; empty text for the study itself
   */
  public record Head(int row, String name) {}

  /**
   * One field.
   *
   * @param column what it is
   * @param cells one for each head
   */
  public record Line(TemplateColumn column, List<FormCell> cells) {
    public Line {
      cells = List.copyOf(cells);
    }
  }

  /** The study itself. */
  static FormTable ofStudy(Draft draft) {
    return of(
        draft, Template.STUDIES, 0, "The paper", Optional.empty(), draft.rows(Template.STUDIES));
  }

  /** Its groups. */
  static FormTable ofGroups(Draft draft) {
    return of(draft, Template.ARMS, 0, "Groups", Optional.empty(), draft.rows(Template.ARMS));
  }

  /** One for each block of outcomes, in their order. */
  static List<FormTable> ofOutcomes(Draft draft) {
    List<DraftRow> rows = draft.rows(Template.OUTCOMES);
    return rows.stream()
        .map(DraftRow::block)
        .distinct()
        .map(block -> ofBlock(draft, rows.stream().filter(row -> row.block() == block).toList()))
        .toList();
  }

  private static FormTable ofBlock(Draft draft, List<DraftRow> rows) {
    DraftRow first = rows.get(0);
    Optional<Outcome> outcome = Outcome.vocabulary().find(first.text(Template.OUTCOME));
    return of(
        draft,
        Template.OUTCOMES,
        first.block(),
        outcome.map(Outcome::label).orElse(first.text(Template.OUTCOME)),
        outcome,
        rows);
  }

  private static FormTable of(
      Draft draft,
      String sheet,
      int block,
      String title,
      Optional<Outcome> outcome,
      List<DraftRow> rows) {
    List<TemplateColumn> columns = FormColumns.shown(draft, sheet, rows);
    return new FormTable(
        sheet,
        block,
        sheet.equals(Template.OUTCOMES) ? rows.get(0).text(Template.OUTCOME) : "",
        title,
        outcome,
        rows.stream().map(row -> new Head(row.number(), whose(row))).toList(),
        columns.stream()
            .map(
                column ->
                    new Line(
                        column,
                        rows.stream().map(row -> FormCell.of(row, column, whose(row))).toList()))
            .toList(),
        FormColumns.further(draft, sheet, rows));
  }

  private static String whose(DraftRow row) {
    return row.text(Template.ARM).equals(Template.ALL) ? "all groups" : row.text(Template.ARM);
  }
}
