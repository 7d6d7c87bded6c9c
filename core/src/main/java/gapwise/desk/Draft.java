package gapwise.desk;

import gapwise.evidence.Ids;
import gapwise.evidence.Reading;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Instrument.Item;
import gapwise.exchange.Template;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;

/**
 * A study as somebody types it: the rows that a filled template would have. No evidence, and
 * nothing about it has to be right yet.
 *
 * @param study id of the study
 * @param baseVersion the version of the study that it was begun from, 0 for a new one
 * @param paper the file of the paper that is read beside it
 * @param nextRow number for the next row, and for the next block
 * @param rows in the order of their sheets
 * @param shown columns that are shown though nothing stands in them yet, each as sheet, full stop,
 *     column
 * @param settled doubts that stand
 * @param reader the one person who may see it, of a paper that two people extract apart; empty for
 *     a draft that lies open on the desk
 */
public record Draft(
    String study,
    int baseVersion,
    Optional<String> paper,
    int nextRow,
    List<DraftRow> rows,
    List<String> shown,
    List<SettledDoubt> settled,
    Optional<String> reader) {
  /** More rows than any paper has patients and outcomes; a larger one comes as a file. */
  public static final int MOST_ROWS = 2_000;

  public Draft {
    if (!Ids.isId(study)) {
      throw new IllegalArgumentException("not the id of a study: '" + study + "'");
    }
    Objects.requireNonNull(paper, "paper");
    rows = List.copyOf(rows);
    shown = List.copyOf(shown);
    settled = List.copyOf(settled);
    Objects.requireNonNull(reader, "reader");
    if (baseVersion < 0) {
      throw new IllegalArgumentException("baseVersion must be 0 or more, was " + baseVersion);
    }
    if (rows.size() > MOST_ROWS) {
      throw new DraftFullException(rows.size());
    }
    int next = nextRow;
    if (rows.stream().map(DraftRow::number).distinct().count() < rows.size()
        || rows.stream().anyMatch(row -> row.number() >= next || row.block() >= next)) {
      throw new IllegalArgumentException("rows of a draft need numbers of their own");
    }
  }

  /** A new study with one group, of which nothing else is known. */
  public static Draft of(String study) {
    return of(study, 0);
  }

  /**
   * The same under a name that was used before.
   *
   * @param baseVersion the last version under this name, 0 for none
   */
  public static Draft of(String study, int baseVersion) {
    return empty(study, baseVersion, Optional.empty())
        .withRow(Template.STUDIES, Map.of())
        .withRow(Template.ARMS, Map.of(Template.ARM, "A"));
  }

  /**
   * What one of two people extracts of a paper, who begins with an empty form whatever stands in
   * the evidence base.
   *
   * @param reader the one person who may see it
   */
  public static Draft ofReader(String study, String reader) {
    return empty(study, 0, Optional.of(reader))
        .withRow(Template.STUDIES, Map.of())
        .withRow(Template.ARMS, Map.of(Template.ARM, "A"));
  }

  private static Draft empty(String study, int baseVersion, Optional<String> reader) {
    return new Draft(
        study, baseVersion, Optional.empty(), 1, List.of(), List.of(), List.of(), reader);
  }

  /**
   * A study that stands in the evidence base, to be mended. What two people agreed on is no longer
   * that once one of them has changed it, so it says extracted once.
   */
  public static Draft of(Study study, int version) {
    Study begun =
        study.status() == ExtractionStatus.AGREED
            ? study.but().status(ExtractionStatus.EXTRACTED).build()
            : study;
    List<DraftRow> rows = DraftBlocks.rows(Template.rows(begun));
    Optional<String> paper =
        rows.stream()
            .flatMap(row -> row.readings().values().stream())
            .map(Reading::paper)
            .findFirst();
    return new Draft(
        study.id(), version, paper, rows.size() + 1, rows, List.of(), List.of(), Optional.empty());
  }

  /** The row of this number, if there is one. */
  public Optional<DraftRow> row(int number) {
    return rows.stream().filter(row -> row.number() == number).findFirst();
  }

  /** The rows of one sheet in their order. */
  public List<DraftRow> rows(String sheet) {
    return rows.stream().filter(row -> row.sheet().equals(sheet)).toList();
  }

  /** With one more row, which stands by itself, at the end of its sheet. */
  public Draft withRow(String sheet, Map<String, String> cells) {
    return withRow(sheet, 0, cells);
  }

  private Draft withRow(String sheet, int block, Map<String, String> cells) {
    Map<String, String> filled = new TreeMap<>(cells);
    filled.put(Template.STUDY, study);
    List<DraftRow> more = new ArrayList<>(rows);
    more.add(new DraftRow(nextRow, sheet, block, new TreeMap<>(filled), new TreeMap<>()));
    return new Draft(study, baseVersion, paper, nextRow + 1, more, shown, settled, reader);
  }

  /**
   * With more rows at the end of their sheet.
   *
   * @param together whether they make one block
   * @param cells of each row
   * @param readings where each was read, by column; rows beyond its end were not
   */
  Draft withRows(
      String sheet,
      boolean together,
      List<Map<String, String>> cells,
      List<Map<String, Reading>> readings) {
    List<DraftRow> more = new ArrayList<>(rows);
    int next = nextRow;
    for (Map<String, String> row : cells) {
      int at = next - nextRow;
      Map<String, String> filled = new TreeMap<>(row);
      filled.put(Template.STUDY, study);
      Map<String, Reading> read = at < readings.size() ? readings.get(at) : Map.of();
      more.add(
          new DraftRow(
              next, sheet, together ? nextRow : 0, new TreeMap<>(filled), new TreeMap<>(read)));
      next++;
    }
    return new Draft(study, baseVersion, paper, next, more, shown, settled, reader);
  }

  /** With a block for an outcome: a row for each group, side by side. */
  public Draft withOutcome(String outcome, Map<String, String> cells) {
    int block = nextRow;
    Draft draft = this;
    for (DraftRow arm : rows(Template.ARMS)) {
      Map<String, String> filled = new TreeMap<>(cells);
      filled.put(Template.ARM, arm.text(Template.ARM));
      filled.put(Template.OUTCOME, outcome);
      draft = draft.withRow(Template.OUTCOMES, block, filled);
    }
    return draft;
  }

  /**
   * With the items of an instrument to be judged, a row each, and one for the whole.
   *
   * @param cells what all rows say, such as the outcome that is judged
   */
  public Draft withAppraisal(Instrument instrument, Map<String, String> cells) {
    int block = nextRow;
    List<String> items = new ArrayList<>(instrument.items().stream().map(Item::code).toList());
    items.add(Template.OVERALL);
    Draft draft = this;
    for (String item : items) {
      Map<String, String> filled = new TreeMap<>(cells);
      filled.put("instrument", instrument.code());
      filled.put("item", item);
      draft = draft.withRow(Template.APPRAISAL, block, filled);
    }
    return draft;
  }

  /** With one more group, which gets its row in each block of outcomes that groups share. */
  public Draft withGroup(String arm) {
    Draft draft = withRow(Template.ARMS, Map.of(Template.ARM, arm));
    for (int block : rows(Template.OUTCOMES).stream().map(DraftRow::block).distinct().toList()) {
      Optional<DraftRow> first =
          rows.stream().filter(row -> block > 0 && row.block() == block).findFirst();
      if (first.isPresent()) {
        Map<String, String> cells =
            Map.of(Template.ARM, arm, Template.OUTCOME, first.get().text(Template.OUTCOME));
        draft = draft.withRow(Template.OUTCOMES, block, cells);
      }
    }
    return draft;
  }

  /** Without one row; a group takes its outcomes and patients with it. */
  public Draft withoutRow(int number) {
    Optional<DraftRow> gone = row(number);
    if (gone.isEmpty()) {
      return this;
    }
    boolean group = gone.get().sheet().equals(Template.ARMS);
    String arm = gone.get().text(Template.ARM);
    return keeping(
        rows.stream()
            .filter(row -> row.number() != number)
            .filter(row -> !group || !row.text(Template.ARM).equals(arm))
            .toList());
  }

  /** Without the rows of one block. */
  public Draft withoutBlock(int block) {
    return block == 0 ? this : keeping(rows.stream().filter(row -> row.block() != block).toList());
  }

  private Draft keeping(List<DraftRow> left) {
    return new Draft(study, baseVersion, paper, nextRow, left, shown, settled, reader);
  }

  /**
   * With another text in one cell; a group's other name goes to its outcomes and patients too.
   *
   * @throws IllegalArgumentException where there is no such row or column
   */
  public Draft withCell(int number, String column, String text, Optional<Reading> reading) {
    DraftRow row = row(number).orElseThrow(() -> new IllegalArgumentException("no row " + number));
    if (row.sheet().equals(Template.ARMS) && column.equals(Template.ARM) && !text.isBlank()) {
      String before = row.text(Template.ARM);
      return changed(
          other ->
              other.text(Template.ARM).equals(before)
                  ? other.with(Template.ARM, text, Optional.empty())
                  : other);
    }
    return changed(other -> other.number() == number ? other.with(column, text, reading) : other);
  }

  private Draft changed(UnaryOperator<DraftRow> change) {
    return keeping(rows.stream().map(change).toList());
  }

  /** With the paper beside it, or none. */
  public Draft withPaper(Optional<String> other) {
    return new Draft(study, baseVersion, other, nextRow, rows, shown, settled, reader);
  }

  /** With a column shown. */
  public Draft withShown(String sheet, String column) {
    if (Template.column(sheet, column).isEmpty()) {
      throw new IllegalArgumentException("sheet " + sheet + " has no column " + column);
    }
    List<String> more = new ArrayList<>(shown);
    String name = sheet + "." + column;
    if (!more.contains(name)) {
      more.add(name);
    }
    return new Draft(study, baseVersion, paper, nextRow, rows, more, settled, reader);
  }

  /** With a doubt that stands. */
  public Draft withSettled(SettledDoubt doubt) {
    List<SettledDoubt> more = new ArrayList<>(settled);
    more.removeIf(one -> one.key().equals(doubt.key()));
    more.add(doubt);
    return new Draft(study, baseVersion, paper, nextRow, rows, shown, more, reader);
  }
}
