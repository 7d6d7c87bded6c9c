package gapwise.untidy;

import gapwise.printed.Printed;
import gapwise.printed.Proposed;
import gapwise.printed.Proposer;
import gapwise.printed.Setting;
import gapwise.printed.StudyNames;
import gapwise.printed.Wanted;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The reading of all grids of one file under way. */
final class BookReading {
  private final List<Mapping> known;
  private final StudyBook studies = new StudyBook();
  private final List<FoundField> fields = new ArrayList<>();
  private final List<SetApart> apart = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();
  private final List<Mapping> mappings = new ArrayList<>();
  private final List<List<String>> headings = new ArrayList<>();

  BookReading(List<Mapping> known) {
    this.known = List.copyOf(known);
  }

  void read(Grid grid) {
    Matrix matrix = new Matrix(grid);
    TableFinder finder = new TableFinder(matrix);
    Optional<GridCell> named =
        finder.lines().stream().filter(line -> StudyNames.is(name(line))).findFirst();
    String study =
        StudyBook.id(named.flatMap(line -> StudyNames.shortName(name(line))).orElse(grid.name()));
    named.ifPresent(line -> named(grid, line, study));
    finder.lines().stream()
        .filter(line -> named.filter(line::equals).isEmpty())
        .forEach(
            line ->
                apart.add(
                    new SetApart(
                        grid.name(),
                        line.id(),
                        line.text(),
                        "A line outside the table: title, legend or footnote.")));
    apart.addAll(finder.apart());
    Legend legend = new Legend(finder.lines());
    for (Area area : finder.areas()) {
      Logical proposed = Orientation.of(matrix, area);
      Logical table =
          known.stream()
              .filter(mapping -> mapping.isFor(proposed))
              .findFirst()
              .map(mapping -> mapping.applied(proposed))
              .orElse(proposed);
      mappings.add(Mapping.proposed(table));
      headings.add(table.variables().stream().map(one -> one.heading().words()).toList());
      TableReading reading = new TableReading(table, legend, studies, study);
      fields.addAll(reading.fields());
      apart.addAll(reading.apart());
    }
    grid.cells().forEach(cell -> note(grid, cell));
  }

  /** What a line begins with, up to its first mark: "Author 2016, bone transport". */
  private static String name(GridCell line) {
    String first = line.text().split("[,:;.] ", 2)[0];
    return StudyNames.is(line.text()) ? line.text() : first;
  }

  /** A study named above its table. */
  private void named(Grid grid, GridCell line, String study) {
    FoundField.Whose whose = new FoundField.Whose(study, Optional.empty(), Optional.empty());
    for (Proposed value :
        Proposer.propose(name(line), Wanted.column("studies", "study_id"), Setting.none())) {
      fields.add(
          new FoundField(
              "studies",
              whose,
              Optional.empty(),
              FoundField.Row.WHOLE,
              value,
              grid.name(),
              line.id(),
              Optional.empty(),
              line.text()));
    }
  }

  private void note(Grid grid, GridCell cell) {
    String place =
        (grid.name().isEmpty() ? "" : "Sheet " + grid.name() + ", ") + "cell " + cell.id();
    cell.comment().ifPresent(words -> notes.add(place + " has the comment '" + words + "'."));
    if (cell.struck()) {
      notes.add(place + " is struck through.");
    }
    if (!Printed.marks(cell.text()).isEmpty() && Matrix.isValue(cell)) {
      notes.add(place + " has the mark '" + Printed.marks(cell.text()) + "' of a footnote.");
    }
  }

  Preview preview() {
    return new Preview(CrossChecks.together(fields), apart, notes, mappings, headings);
  }
}
