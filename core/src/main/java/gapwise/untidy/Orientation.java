package gapwise.untidy;

import gapwise.printed.Codes;
import gapwise.printed.StudyNames;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Finds out whether a table's rows or its columns are the studies, groups or patients. */
final class Orientation {
  private static final Pattern NAMED_GROUP =
      Pattern.compile(
          "(?i)(treatment |study )?(group|arm|gruppe|cohort|series) .{1,60}|.{1,40} (group|arm|gruppe|cohort)\\b.{0,20}");
  private static final Pattern NAMED_PATIENT =
      Pattern.compile(
          "(?i)(patient|case|pt|fall|subject)\\.? ?(no\\.? ?)?[a-z]?\\d{1,3}|p\\d{1,3}");

  private final Matrix matrix;
  private final Area area;

  private Orientation(Matrix matrix, Area area) {
    this.matrix = matrix;
    this.area = area;
  }

  static Logical of(Matrix matrix, Area area) {
    Orientation table = new Orientation(matrix, area);
    return table.isTurned() ? table.turned() : table.upright();
  }

  private List<Integer> columns() {
    List<Integer> columns = new ArrayList<>();
    for (int column = area.firstColumn(); column <= area.lastColumn(); column++) {
      int at = column;
      boolean used =
          area.header().stream().anyMatch(row -> matrix.covering(row, at).isPresent())
              || area.data().stream().anyMatch(row -> matrix.at(row, at).isPresent());
      if (used) {
        columns.add(column);
      }
    }
    return columns;
  }

  private Heading top(int column) {
    return Heading.of(above(column).stream().map(GridCell::text).toList());
  }

  /** The cells over a column from the top; one that stands over several columns counts for all. */
  private List<GridCell> above(int column) {
    List<GridCell> cells = new ArrayList<>();
    for (int at = 0; at < area.header().size(); at++) {
      int row = area.header().get(at);
      boolean inner = at + 1 == area.header().size();
      (inner ? matrix.covering(row, column) : spanning(row, column)).ifPresent(cells::add);
    }
    return cells;
  }

  /** A blank beside a name in an upper row belongs to it, if a lower row speaks there. */
  private Optional<GridCell> spanning(int row, int column) {
    Optional<GridCell> own = matrix.covering(row, column);
    int last = area.header().get(area.header().size() - 1);
    for (int left = column; own.isEmpty() && left >= area.firstColumn(); left--) {
      if (matrix.at(last, left).isEmpty()) {
        return Optional.empty();
      }
      own = matrix.covering(row, left);
    }
    return own;
  }

  private List<String> headerTexts() {
    return area.header().stream()
        .flatMap(row -> matrix.row(row).stream())
        .map(GridCell::text)
        .toList();
  }

  private boolean isTurned() {
    List<Integer> columns = columns();
    if (columns.size() < 2) {
      return false;
    }
    int side = 0;
    int outcomes = 0;
    for (int row : area.data()) {
      Heading heading = Heading.of(List.of(matrix.text(row, columns.get(0))));
      String label = matrix.text(row, columns.get(0));
      boolean measure =
          heading.concept().filter(found -> found.over().size() < 2).isPresent()
              && Codes.methodNamed(label).isEmpty()
              && !Matrix.isValue(cellOrBlank(row, columns.get(0)));
      side += measure ? 1 : 0;
      outcomes += Concepts.outcome(heading.target()).isPresent() ? 1 : 0;
    }
    long groups = headerTexts().stream().filter(Orientation::namesGroup).count();
    long patients =
        headerTexts().stream()
            .filter(text -> NAMED_PATIENT.matcher(text.strip()).matches())
            .count();
    long studies = headerTexts().stream().filter(StudyNames::is).count();
    long top = columns.stream().filter(column -> top(column).concept().isPresent()).count();
    boolean sideways = side >= 2 && 2 * side >= area.data().size();
    boolean longForm =
        columns.stream().map(this::top).anyMatch(h -> h.target().equals("outcome-name"))
            && groups == 0
            && outcomes >= 1
            && top + statisticsAlone(columns) >= 3;
    return sideways && !longForm && (groups >= 1 || studies >= 1 || patients >= 2 || side > top);
  }

  private long statisticsAlone(List<Integer> columns) {
    return columns.stream()
        .map(this::top)
        .filter(h -> h.concept().isEmpty() && !h.said().statistics().isEmpty())
        .count();
  }

  private GridCell cellOrBlank(int row, int column) {
    return matrix.at(row, column).orElse(GridCell.plain(row, column, "", ""));
  }

  static boolean namesGroup(String text) {
    return Codes.methodNamed(text.replaceAll("\\(?n ?= ?\\d+\\)?", "")).isPresent()
        || NAMED_GROUP.matcher(text.strip()).matches();
  }

  private Logical upright() {
    List<Variable> variables = new ArrayList<>();
    Set<GridCell> groups = groups();
    for (int column : columns()) {
      List<GridCell> above = above(column);
      variables.add(
          new Variable(
              column,
              Heading.of(
                  above.stream()
                      .filter(cell -> !groups.contains(cell))
                      .map(GridCell::text)
                      .toList()),
              above.stream().filter(groups::contains).findFirst()));
    }
    List<Optional<GridCell>> sections = new ArrayList<>();
    Optional<GridCell> section = Optional.empty();
    Map<Integer, GridCell> lines = new LinkedHashMap<>(area.sections());
    int from = -1;
    for (int row : area.data()) {
      for (int line = from + 1; line < row; line++) {
        if (lines.containsKey(line)) {
          section = Optional.ofNullable(lines.get(line));
        }
      }
      from = row;
      sections.add(section);
    }
    return new Logical(matrix, false, named(variables), area.data(), List.of(), sections);
  }

  /** Names of groups that stand over two columns or more each, if there are several of them. */
  private Set<GridCell> groups() {
    Map<GridCell, Integer> over = new LinkedHashMap<>();
    for (int column : columns()) {
      List<GridCell> above = above(column);
      above.stream()
          .limit(Math.max(0, above.size() - 1))
          .filter(cell -> namesGroup(cell.text()))
          .forEach(cell -> over.merge(cell, 1, Integer::sum));
    }
    over.values().removeIf(columns -> columns < 2);
    return over.size() > 1 ? over.keySet() : Set.of();
  }

  /** A heading that says "SD" alone speaks of what its left neighbour speaks of. */
  private static List<Variable> named(List<Variable> variables) {
    List<Variable> named = new ArrayList<>();
    for (Variable variable : variables) {
      Heading heading = variable.heading();
      boolean alone =
          heading.concept().isEmpty()
              && heading.said().rest().isEmpty()
              && !heading.words().isEmpty();
      Variable left = named.isEmpty() ? variable : named.get(named.size() - 1);
      boolean measured = !left.target().isEmpty() && !Targets.isIdentity(left.target());
      boolean same = measured && left.group().equals(variable.group());
      if (alone && same) {
        named.add(variable.with(heading.under(left.heading())));
      } else if (same && !named.isEmpty() && left.target().equals(variable.target())) {
        named.add(variable.with(heading.inUnitOf(left.heading())));
      } else {
        named.add(variable);
      }
    }
    return named;
  }

  private Logical turned() {
    List<Integer> columns = columns();
    int labels = labelColumns(columns);
    List<Variable> variables = new ArrayList<>();
    String section = "";
    int from = -1;
    String carried = "";
    for (int row : area.data()) {
      for (int line = from + 1; line < row; line++) {
        GridCell open = area.sections().get(line);
        section = open == null ? section : open.text();
      }
      from = row;
      List<String> parts = new ArrayList<>();
      Set<String> own = new LinkedHashSet<>();
      for (int column : columns.subList(0, labels)) {
        own.add(matrix.covering(row, column).map(GridCell::text).orElse(""));
      }
      String label = String.join(" ", own).strip();
      boolean bare = Heading.of(List.copyOf(own)).concept().isEmpty();
      if (bare && own.iterator().next().isEmpty()) {
        parts.add(carried);
      } else if (bare) {
        parts.add(section);
      } else {
        parts.add(contextOf(section, label));
        carried = own.iterator().next();
      }
      parts.addAll(own);
      variables.add(new Variable(row, Heading.of(parts), Optional.empty()));
    }
    List<Integer> entities = columns.subList(labels, columns.size());
    List<List<GridCell>> names = new ArrayList<>();
    for (int column : entities) {
      List<GridCell> above = new ArrayList<>();
      area.header()
          .forEach(
              row ->
                  matrix
                      .covering(row, column)
                      .filter(cell -> !above.contains(cell))
                      .ifPresent(above::add));
      names.add(above);
    }
    return new Logical(
        matrix,
        true,
        variables,
        entities,
        names,
        entities.stream().map(e -> Optional.<GridCell>empty()).toList());
  }

  /** "Infection" over "before" and "after" says what those are; over "Age" it says nothing. */
  private static String contextOf(String section, String label) {
    if (section.isEmpty()) {
      return "";
    }
    Heading alone = Heading.of(List.of(label));
    Heading both = Heading.of(List.of(section, label));
    boolean more =
        both.concept().map(Concept::words).orElse(0)
            > alone.concept().map(Concept::words).orElse(0);
    return more ? section : "";
  }

  /** How many columns from the left hold names of rows. */
  private int labelColumns(List<Integer> columns) {
    int labels = 1;
    while (labels < columns.size() - 1) {
      int column = columns.get(labels);
      boolean headed =
          area.header().stream()
              .anyMatch(
                  row ->
                      matrix
                          .at(row, column)
                          .filter(
                              c ->
                                  namesGroup(c.text()) || NAMED_PATIENT.matcher(c.text()).matches())
                          .isPresent());
      long values =
          area.data().stream()
              .filter(row -> matrix.at(row, column).filter(Matrix::isValue).isPresent())
              .count();
      if (headed || values > 0) {
        break;
      }
      labels++;
    }
    return labels;
  }
}
