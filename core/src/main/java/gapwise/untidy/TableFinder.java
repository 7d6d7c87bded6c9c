package gapwise.untidy;

import gapwise.printed.Said;
import gapwise.printed.StudyNames;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * Finds the tables of a grid: which rows name columns, which hold values, and which lines stand
 * above, between and below.
 */
final class TableFinder {
  /** More rows than this never name columns. */
  private static final int MOST_HEADER_ROWS = 3;

  /** A text of so many words is a sentence and no name. */
  private static final int WORDS_OF_A_SENTENCE = 7;

  private static final Pattern TOTAL =
      Pattern.compile(
          "(?i)((grand |sub-?)?total\\b|(weighted|pooled) (mean|total|estimate|average)\\b).*"
              + "|(over)?(sum|mean|average|median|all|overall|pooled|gesamt|summe|mittelwert|moyenne"
              + "|sd|range|all (patients|studies|cases|groups)|mean ?(±|\\+/-) ?sd)\\b[ :.(%)n=0-9]*");

  private final Matrix matrix;
  private final Map<List<Integer>, Boolean> upright = new HashMap<>();
  private final List<Area> areas = new ArrayList<>();
  private final List<GridCell> lines = new ArrayList<>();
  private final List<SetApart> apart = new ArrayList<>();

  TableFinder(Matrix matrix) {
    this.matrix = matrix;
    find();
  }

  List<Area> areas() {
    return areas;
  }

  /** Lines that belong to no table: titles, legends, footnotes. */
  List<GridCell> lines() {
    return lines;
  }

  /** Totals, repeated headers and the like. */
  List<SetApart> apart() {
    return apart;
  }

  private void find() {
    int row = 0;
    while (row < matrix.height()) {
      int start = headerOrData(row);
      for (int line = row; line < start; line++) {
        lines.addAll(matrix.row(line));
      }
      if (start >= matrix.height()) {
        return;
      }
      row = table(start);
    }
  }

  /** The first row from here on that begins a table. */
  private int headerOrData(int from) {
    int row = from;
    while (row < matrix.height() && !begins(row)) {
      row++;
    }
    return row;
  }

  private boolean begins(int row) {
    if (matrix.isData(row)) {
      return true;
    }
    boolean banner =
        matrix.row(row).stream()
            .anyMatch(cell -> spans(cell) || Orientation.namesGroup(cell.text()));
    boolean speaks = banner || names(row) > 0;
    boolean narrow =
        row + 1 < matrix.height() && 2 * matrix.row(row).size() <= matrix.row(row + 1).size();
    if (!speaks && narrow && isHeader(row + 1) && names(row + 1) > 1) {
      // Words above a header that say nothing of any column are a title, in however many cells.
      return false;
    }
    return isHeader(row) && below(row).stream().anyMatch(matrix::isData)
        || names(row) >= 2 && !below(row).isEmpty();
  }

  private List<Integer> below(int row) {
    List<Integer> rows = new ArrayList<>();
    for (int next = row + 1; next <= row + MOST_HEADER_ROWS && next < matrix.height(); next++) {
      if (matrix.isBlank(next)) {
        break;
      }
      rows.add(next);
    }
    return rows;
  }

  private boolean isHeader(int row) {
    List<GridCell> cells = matrix.row(row);
    boolean wide = cells.size() > 1 || cells.size() == 1 && spans(cells.get(0));
    return wide
        && !matrix.isData(row)
        && cells.stream().noneMatch(TableFinder::isSentence)
        && !(cells.size() < 3 && StudyNames.is(cells.get(0).text()));
  }

  /** A banner over some of the columns belongs to the header; over all of them it is a title. */
  private boolean spans(GridCell cell) {
    return cell.column() > 0
        && matrix
            .mergedAt(cell.row(), cell.column())
            .filter(m -> m.lastColumn() > m.firstColumn())
            .isPresent();
  }

  static boolean isSentence(GridCell cell) {
    String text = cell.text();
    int words = text.split("\\s+", -1).length;
    return words > WORDS_OF_A_SENTENCE && (text.endsWith(".") || words > 2 * WORDS_OF_A_SENTENCE)
        || text.contains(". ") && text.endsWith(".") && words > 4;
  }

  /** How many cells of a row name something that is known. */
  private int names(int row) {
    return (int)
        matrix.row(row).stream()
            .filter(cell -> !Matrix.isValue(cell) && !isSentence(cell) && matrix.names(cell.text()))
            .count();
  }

  /** Takes the table that begins at a row; gives the row after it. */
  private int table(int start) {
    List<Integer> header = new ArrayList<>();
    int row = start;
    while (row < matrix.height()
        && header.size() < MOST_HEADER_ROWS
        && isHeader(row)
        && (header.isEmpty()
            || below(row).stream().anyMatch(matrix::isData)
                && !matrix.isData(row)
                && continues(header, row))) {
      header.add(row++);
    }
    List<Integer> data = new ArrayList<>();
    Map<Integer, GridCell> sections = new LinkedHashMap<>();
    Map<Integer, GridCell> open = new LinkedHashMap<>();
    int last = row - 1;
    while (row < matrix.height() && !endsAt(row, header, data)) {
      if (!matrix.isBlank(row)) {
        take(row, header, data, open);
        if (data.contains(row)) {
          sections.putAll(open);
          open.clear();
          last = row;
        } else if (!matrix.isLine(row)) {
          last = row;
        }
      }
      row++;
    }
    // Lines after the last values are no sections: footnotes.
    open.values().forEach(lines::add);
    areas.add(
        new Area(
            columns(header, data).min().orElse(0),
            columns(header, data).max().orElse(0),
            header,
            data,
            sections));
    return Math.max(last + 1, row);
  }

  /**
   * A further header row has gaps where the row above speaks for both, or says how and in which
   * unit; else it is a row of words.
   */
  private boolean continues(List<Integer> header, int row) {
    int above = header.get(header.size() - 1);
    Set<Integer> columns = new HashSet<>();
    matrix.row(above).forEach(cell -> columns.add(cell.column()));
    boolean gaps =
        matrix.row(row).stream().anyMatch(cell -> !columns.contains(cell.column()))
            || matrix.row(row).size() < matrix.row(above).size();
    long says =
        matrix.row(row).stream()
            .map(cell -> Said.read(cell.text()))
            .filter(
                said ->
                    !said.statistics().isEmpty()
                        || said.unit().isPresent()
                        || said.timePoint().isPresent())
            .count();
    return gaps && names(row) + says >= 1 || 2 * says > matrix.row(row).size() || names(row) >= 2;
  }

  private boolean endsAt(int row, List<Integer> header, List<Integer> data) {
    if (data.isEmpty()) {
      return false;
    }
    boolean after = row > 0 && matrix.isBlank(row - 1);
    if (after
        && matrix.isLine(row)
        && below(row).stream().noneMatch(r -> matrix.isData(r) && !startsTable(r))) {
      return true;
    }
    boolean another =
        isHeader(row)
            && matrix.row(row).size() > 1
            && names(row) >= 2
            && !repeats(header, row)
            && (after || below(row).stream().anyMatch(matrix::isData));
    boolean titled = after && matrix.isLine(row) && below(row).stream().anyMatch(this::startsTable);
    return another || titled;
  }

  private boolean startsTable(int row) {
    return isHeader(row) && matrix.row(row).size() > 1 && names(row) >= 2;
  }

  private void take(
      int row, List<Integer> header, List<Integer> data, Map<Integer, GridCell> open) {
    List<GridCell> cells = matrix.row(row);
    GridCell first = cells.get(0);
    if (repeats(header, row)) {
      cells.forEach(cell -> setApart(cell, "The header stands here again."));
    } else if (isTotal(cells, header)) {
      cells.forEach(
          cell ->
              setApart(cell, "A line of totals or means: it says again what the rows above say."));
    } else if (cells.size() == 1 && !Matrix.isValue(first)) {
      open.put(row, first);
    } else if (cells.stream().allMatch(TableFinder::isSentence)) {
      lines.addAll(cells);
    } else {
      data.add(row);
    }
  }

  /** Where measures stand beside rows, "Mean" begins a row of values like any other. */
  private boolean isTotal(List<GridCell> cells, List<Integer> header) {
    return TOTAL.matcher(cells.get(0).text()).matches()
        && (upright.computeIfAbsent(header, this::isUpright)
            || cells.stream().anyMatch(GridCell::formula));
  }

  /** Whether the header names measures, and no groups. */
  private boolean isUpright(List<Integer> header) {
    boolean grouped =
        header.stream()
            .flatMap(row -> matrix.row(row).stream())
            .anyMatch(cell -> Orientation.namesGroup(cell.text()));
    return header.stream().mapToInt(this::names).sum() >= 2 && !grouped;
  }

  private boolean repeats(List<Integer> header, int row) {
    if (header.isEmpty() || matrix.row(row).size() < 2) {
      return false;
    }
    long same =
        matrix.row(row).stream()
            .filter(
                cell ->
                    header.stream()
                        .anyMatch(
                            h ->
                                Words.folded(matrix.text(h, cell.column()))
                                    .equals(Words.folded(cell.text()))))
            .count();
    return 10 * same >= 6L * matrix.row(row).size();
  }

  private void setApart(GridCell cell, String reason) {
    apart.add(new SetApart(matrix.grid().name(), cell.id(), cell.text(), reason));
  }

  private IntStream columns(List<Integer> header, List<Integer> data) {
    return both(header, data).stream()
        .flatMap(row -> matrix.row(row).stream())
        .mapToInt(GridCell::column);
  }

  private static List<Integer> both(List<Integer> header, List<Integer> data) {
    List<Integer> rows = new ArrayList<>(header);
    rows.addAll(data);
    return rows;
  }
}
