package gapwise.paper.trace;

import gapwise.paper.Box;
import gapwise.paper.Stretches;
import gapwise.paper.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * Numbers at risk printed under a figure for one group.
 *
 * @param label words before them; empty if there are none
 * @param times in the unit of the axis, rising
 * @param patients one for each time, never rising
 * @param boxes of the numbers
 */
public record AtRiskRow(String label, List<Double> times, List<Integer> patients, List<Box> boxes) {
  /** How far below the axis numbers at risk are looked for, points. */
  private static final double DEEPEST = 150;

  public AtRiskRow {
    times = List.copyOf(times);
    patients = List.copyOf(patients);
    boxes = List.copyOf(boxes);
    if (times.size() != patients.size() || boxes.size() != times.size()) {
      throw new IllegalArgumentException("every number at risk needs its time and box");
    }
  }

  static List<AtRiskRow> under(PlotArea area) {
    Box band =
        new Box(
            0,
            area.below().box().bottom(),
            Math.min(area.page().width(), area.box().right() + 30),
            area.below().box().bottom() + DEEPEST);
    List<Word> words =
        area.page().words().stream()
            .filter(w -> w.turn() == Word.Turn.NONE && band.holdsMiddleOf(w.box()))
            .toList();
    List<AtRiskRow> rows = new ArrayList<>();
    for (List<Word> row : Stretches.rows(words)) {
      read(row, area, rows);
    }
    return rows;
  }

  private static void read(List<Word> row, PlotArea area, List<AtRiskRow> rows) {
    double first = area.below().first().at() - 14;
    List<Double> times = new ArrayList<>();
    List<Integer> patients = new ArrayList<>();
    List<Box> boxes = new ArrayList<>();
    String label =
        row.stream()
            .filter(w -> w.box().middle() < first)
            .map(Word::text)
            .collect(Collectors.joining(" "));
    for (Word word : row) {
      if (word.box().middle() < first || word.text().matches("\\([0-9]+\\)")) {
        continue;
      }
      OptionalDouble time = time(word, area);
      if (!word.text().matches("[0-9]{1,5}") || time.isEmpty()) {
        return;
      }
      times.add(time.getAsDouble());
      patients.add(Integer.parseInt(word.text()));
      boxes.add(word.box());
    }
    if (times.size() >= 3 && neverRises(patients) && isRising(times)) {
      rows.add(new AtRiskRow(label, times, patients, boxes));
    }
  }

  /** The number of the axis that a word stands under. */
  private static OptionalDouble time(Word word, PlotArea area) {
    return area.below().ticks().stream()
        .filter(
            t ->
                Math.abs(t.word().box().middle() - word.box().middle()) < 7
                    || Math.abs(t.word().box().left() - word.box().left()) < 1.5)
        .mapToDouble(Ticks.Tick::value)
        .findFirst();
  }

  private static boolean neverRises(List<Integer> patients) {
    for (int i = 1; i < patients.size(); i++) {
      if (patients.get(i) > patients.get(i - 1)) {
        return false;
      }
    }
    return true;
  }

  private static boolean isRising(List<Double> times) {
    for (int i = 1; i < times.size(); i++) {
      if (times.get(i) <= times.get(i - 1)) {
        return false;
      }
    }
    return true;
  }
}
