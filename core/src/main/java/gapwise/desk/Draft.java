package gapwise.desk;

import gapwise.evidence.Ids;
import gapwise.evidence.Reading;
import gapwise.evidence.Study;
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
 * @param nextRow number for the next row
 * @param rows in the order of their sheets
 * @param settled doubts that stand
 */
public record Draft(
    String study,
    int baseVersion,
    Optional<String> paper,
    int nextRow,
    List<DraftRow> rows,
    List<SettledDoubt> settled) {
  /** More rows than any paper has patients and outcomes; a larger one comes as a file. */
  public static final int MOST_ROWS = 2_000;

  public Draft {
    if (!Ids.isId(study)) {
      throw new IllegalArgumentException("not the id of a study: '" + study + "'");
    }
    Objects.requireNonNull(paper, "paper");
    rows = List.copyOf(rows);
    settled = List.copyOf(settled);
    if (baseVersion < 0) {
      throw new IllegalArgumentException("baseVersion must be 0 or more, was " + baseVersion);
    }
    if (rows.size() > MOST_ROWS) {
      throw new IllegalArgumentException(
          "a draft has at most " + MOST_ROWS + " rows, had " + rows.size());
    }
    if (rows.stream().map(DraftRow::number).distinct().count() < rows.size()
        || rows.stream().anyMatch(row -> row.number() >= nextRow)) {
      throw new IllegalArgumentException("rows of a draft need numbers of their own");
    }
  }

  /** A new study with one group, of which nothing else is known. */
  public static Draft of(String study) {
    return new Draft(study, 0, Optional.empty(), 1, List.of(), List.of())
        .withRow(Template.STUDIES, Map.of())
        .withRow(Template.ARMS, Map.of(Template.ARM, "A"));
  }

  /** A study that stands in the evidence base, to be mended. */
  public static Draft of(Study study, int version) {
    Draft draft =
        new Draft(study.id(), version, Optional.empty(), 1, List.of(), List.of());
    List<DraftRow> rows = new ArrayList<>();
    for (Template.FilledRow row : Template.rows(study)) {
      rows.add(DraftReadings.row(rows.size() + 1, row));
    }
    Optional<String> paper =
        rows.stream()
            .flatMap(row -> row.readings().values().stream())
            .map(Reading::paper)
            .findFirst();
    return new Draft(
        draft.study, version, paper, rows.size() + 1, rows, List.of());
  }

  /** The row of this number, if there is one. */
  public Optional<DraftRow> row(int number) {
    return rows.stream().filter(row -> row.number() == number).findFirst();
  }

  /** The rows of one sheet in their order. */
  public List<DraftRow> rows(String sheet) {
    return rows.stream().filter(row -> row.sheet().equals(sheet)).toList();
  }

  /** With one more row at the end of its sheet. */
  public Draft withRow(String sheet, Map<String, String> cells) {
    Map<String, String> filled = new TreeMap<>(cells);
    filled.put(Template.STUDY, study);
    List<DraftRow> more = new ArrayList<>(rows);
    more.add(new DraftRow(nextRow, sheet, new TreeMap<>(filled), new TreeMap<>()));
    return new Draft(study, baseVersion, paper, nextRow + 1, more, settled);
  }

  /** Without one row; a group takes its outcomes and patients with it. */
  public Draft withoutRow(int number) {
    Optional<DraftRow> gone = row(number);
    if (gone.isEmpty()) {
      return this;
    }
    boolean group = gone.get().sheet().equals(Template.ARMS);
    String arm = gone.get().text(Template.ARM);
    List<DraftRow> left =
        rows.stream()
            .filter(row -> row.number() != number)
            .filter(row -> !group || !row.text(Template.ARM).equals(arm))
            .toList();
    return new Draft(study, baseVersion, paper, nextRow, left, settled);
  }

  /**
   * With another text in one cell; a group's other name goes to its outcomes and patients too.
   *
   * @throws IllegalArgumentException where there is no such row or column
   */
  public Draft withCell(int number, String column, String text, Optional<Reading> reading) {
    DraftRow row =
        row(number).orElseThrow(() -> new IllegalArgumentException("no row " + number));
    if (row.sheet().equals(Template.ARMS) && column.equals(Template.ARM) && !text.isBlank()) {
      String before = row.text(Template.ARM);
      return changed(
          other ->
              other.text(Template.ARM).equals(before)
                  ? other.with(Template.ARM, text, Optional.empty())
                  : other);
    }
    return changed(
        other -> other.number() == number ? other.with(column, text, reading) : other);
  }

  private Draft changed(UnaryOperator<DraftRow> change) {
    return new Draft(
        study, baseVersion, paper, nextRow, rows.stream().map(change).toList(), settled);
  }

  /** With the paper beside it, or none. */
  public Draft withPaper(Optional<String> other) {
    return new Draft(study, baseVersion, other, nextRow, rows, settled);
  }

  /** With a doubt that stands. */
  public Draft withSettled(SettledDoubt doubt) {
    List<SettledDoubt> more = new ArrayList<>(settled);
    more.removeIf(one -> one.key().equals(doubt.key()));
    more.add(doubt);
    return new Draft(study, baseVersion, paper, nextRow, rows, more);
  }
}
