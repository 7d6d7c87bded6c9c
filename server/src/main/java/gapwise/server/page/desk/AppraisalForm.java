package gapwise.server.page.desk;

import gapwise.desk.Draft;
import gapwise.desk.DraftRow;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import gapwise.exchange.TemplateWords;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * An instrument being answered.
 *
 * @param block number of its block
 * @param title instrument and outcome
 * @param about what it is for, and where it was published
 * @param lines an item each, the judgement on the whole last
 * @param by who judged, to be typed at the whole
 */
public record AppraisalForm(
    int block, String title, String about, List<Line> lines, List<FormCell> by) {
  private static final List<String> OF_ITEM = List.of("judgement", "reason", "place");
  private static final List<String> OF_WHOLE = List.of("by", "on");

  public AppraisalForm {
    Objects.requireNonNull(title, "title");
    lines = List.copyOf(lines);
    by = List.copyOf(by);
  }

  /** One item: its words, and its judgement, reason and place to be typed. */
  public record Line(String item, List<FormCell> cells) {
    public Line {
      cells = List.copyOf(cells);
    }
  }

  /** One for each appraisal of a draft. */
  static List<AppraisalForm> of(Draft draft) {
    List<DraftRow> rows = draft.rows(Template.APPRAISAL);
    return rows.stream()
        .map(DraftRow::block)
        .distinct()
        .flatMap(block -> of(rows.stream().filter(row -> row.block() == block).toList()).stream())
        .toList();
  }

  private static Optional<AppraisalForm> of(List<DraftRow> rows) {
    DraftRow first = rows.get(0);
    return Instrument.vocabulary().find(first.text("instrument")).map(one -> of(one, rows));
  }

  private static AppraisalForm of(Instrument instrument, List<DraftRow> rows) {
    DraftRow first = rows.get(0);
    String outcome = first.text("outcome");
    DraftRow last = rows.get(rows.size() - 1);
    return new AppraisalForm(
        first.block(),
        outcome.isEmpty()
            ? instrument.label()
            : instrument.label()
                + ", "
                + TemplateWords.cell(Template.APPRAISAL, "outcome", outcome),
        instrument.about() + ". " + instrument.citation(),
        rows.stream().map(row -> line(instrument, row)).toList(),
        OF_WHOLE.stream().map(column -> cell(last, column, "")).toList());
  }

  private static Line line(Instrument instrument, DraftRow row) {
    String code = row.text("item");
    boolean whole = code.equals(Template.OVERALL);
    Optional<Instrument.Item> item = instrument.item(code);
    String label = item.map(Instrument.Item::label).orElse(whole ? "On the whole" : code);
    List<Instrument.Judgement> allowed =
        whole ? instrument.overall() : item.map(instrument::allowed).orElse(List.of());
    return new Line(
        label,
        OF_ITEM.stream().map(column -> narrowed(cell(row, column, label), allowed)).toList());
  }

  private static FormCell cell(DraftRow row, String column, String whose) {
    return FormCell.of(row, Template.column(Template.APPRAISAL, column).orElseThrow(), whose);
  }

  /** Of the words for a judgement only those that the instrument allows here. */
  private static FormCell narrowed(FormCell cell, List<Instrument.Judgement> allowed) {
    TemplateColumn column = cell.column();
    if (!column.name().equals("judgement")) {
      return cell;
    }
    List<TemplateColumn.Choice> choices =
        allowed.stream().map(one -> new TemplateColumn.Choice(one.code(), one.label())).toList();
    return new FormCell(
        cell.row(), column.withChoices(choices), cell.whose(), cell.text(), cell.reading());
  }
}
