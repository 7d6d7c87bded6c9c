package gapwise.desk;

import gapwise.evidence.PageBox;
import gapwise.evidence.Reading;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import gapwise.exchange.TemplateColumn.Choice;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.trace.Axes;
import gapwise.paper.trace.DataPoint;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Makes each point of a scatter a patient of a draft, with a number on each axis. */
public final class ScatterIntoDraft {
  private static final String POINT = "point ";

  /** What the middle of a printed sign is exact to when a person points at it, points. */
  private static final double FINEST = 0.2;

  private ScatterIntoDraft() {}

  /**
   * A column of the patients that an axis may stand for.
   *
   * @param column its name
   * @param title its name for people
   * @param unit symbol of the unit, where a column beside it holds one
   */
  public record Target(String column, String title, Optional<String> unit) {
    /** How forms name it. */
    public String name() {
      return unit.map(symbol -> column + "|" + symbol).orElse(column);
    }

    /** With its unit, for people. */
    public String label() {
      return unit.map(symbol -> title + ", " + symbol).orElse(title);
    }
  }

  /**
   * What a scatter is of, as a person says.
   *
   * @param arm the draft's group
   * @param across what runs along x
   * @param up what runs along y
   * @param place as the paper calls the figure
   */
  public record ScatterOf(String arm, Target across, Target up, Optional<String> place) {
    public ScatterOf {
      Objects.requireNonNull(arm, "arm");
      Objects.requireNonNull(place, "place");
      if (across.column().equals(up.column())) {
        throw new IllegalArgumentException("both axes stand for " + up.column());
      }
    }
  }

  /** Every column with a number, once for each unit that it may be in. */
  public static List<Target> targets() {
    List<Target> targets = new ArrayList<>();
    for (TemplateColumn column : Template.columns(Template.PATIENTS)) {
      if (column.number() && !column.several()) {
        List<String> units = units(column.name());
        units.forEach(
            unit -> targets.add(new Target(column.name(), column.title(), Optional.of(unit))));
        if (units.isEmpty()) {
          targets.add(new Target(column.name(), column.title(), Optional.empty()));
        }
      }
    }
    return List.copyOf(targets);
  }

  private static List<String> units(String column) {
    Optional<Unit.Dimension> dimension =
        Outcome.vocabulary()
            .find(column.replace('_', '-'))
            .flatMap(Outcome::unit)
            .map(Unit::dimension);
    return ReadWords.unitColumn(Template.PATIENTS, column)
        .flatMap(name -> Template.column(Template.PATIENTS, name))
        .map(TemplateColumn::choices)
        .orElse(List.of())
        .stream()
        .map(Choice::code)
        .filter(code -> dimension.isEmpty() || Unit.ofSymbol(code).dimension() == dimension.get())
        .toList();
  }

  /** The cells of the rows that the points would make, in their order. */
  public static List<Map<String, String>> rows(Draft draft, FigureMarks marks, ScatterOf of) {
    Axes axes = marks.axes();
    Set<String> taken =
        draft.rows(Template.PATIENTS).stream()
            .map(row -> row.text(Template.PATIENT))
            .collect(Collectors.toSet());
    List<Map<String, String>> rows = new ArrayList<>();
    int number = 0;
    for (Point point : marks.points()) {
      do {
        number++;
      } while (taken.contains(POINT + number));
      DataPoint printed = FigurePoints.printed(axes, axes.at(point));
      Map<String, String> cells = new TreeMap<>();
      cells.put(Template.ARM, of.arm());
      cells.put(Template.PATIENT, POINT + number);
      put(cells, of.across(), FigurePoints.rounded(axes, true, printed.x(), point, FINEST));
      put(cells, of.up(), FigurePoints.rounded(axes, false, printed.y(), point, FINEST));
      of.place().ifPresent(place -> cells.put(CurveIntoDraft.PLACE, place));
      rows.add(cells);
    }
    return rows;
  }

  private static void put(Map<String, String> cells, Target target, String value) {
    cells.put(target.column(), value);
    target
        .unit()
        .ifPresent(
            unit ->
                cells.put(
                    ReadWords.unitColumn(Template.PATIENTS, target.column()).orElseThrow(), unit));
  }

  /** The draft with a patient for each point. */
  public static Draft take(Draft draft, FigureMarks marks, ScatterOf of) {
    List<Map<String, Reading>> readings = new ArrayList<>();
    for (Point point : marks.points()) {
      Map<String, Reading> read = new HashMap<>();
      for (String column : List.of(of.across().column(), of.up().column())) {
        List<PageBox> box = List.of(FigureMarks.around(point));
        FigureMarks.Source source = marks.source();
        read.put(
            column, new Reading(column, source.file(), source.page(), box, of.place().orElse("")));
      }
      readings.add(read);
    }
    return draft.withRows(Template.PATIENTS, false, rows(draft, marks, of), readings);
  }
}
