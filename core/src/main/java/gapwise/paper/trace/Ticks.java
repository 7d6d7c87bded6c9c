package gapwise.paper.trace;

import gapwise.paper.Box;
import gapwise.paper.DrawnPath;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.Page;
import gapwise.paper.Word;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * Numbers printed along an axis with the places that they stand for.
 *
 * @param level whether they stand beside each other, below an axis
 * @param ticks at least three, along the axis
 */
record Ticks(boolean level, List<Tick> ticks) {
  /** A number printed from its units to its last decimal is within half of that: a place, so. */
  private static final double PLACE_OFF = 1.6;

  private static final Pattern NUMBER = Pattern.compile("[-−–]?[0-9]{1,5}([.,·][0-9]{1,4})?%?");

  /**
   * A number.
   *
   * @param value as printed
   * @param at along the axis, points
   * @param word that prints it
   */
  record Tick(double value, double at, Word word) {}

  Ticks {
    ticks = List.copyOf(ticks);
  }

  Box box() {
    return Box.around(ticks.stream().map(t -> t.word().box()).toList());
  }

  Tick first() {
    return ticks.get(0);
  }

  Tick last() {
    return ticks.get(ticks.size() - 1);
  }

  boolean saysPercent() {
    return ticks.stream().anyMatch(t -> t.word().text().endsWith("%"));
  }

  static OptionalDouble number(String text) {
    if (!NUMBER.matcher(text).matches()) {
      return OptionalDouble.empty();
    }
    String plain =
        text.replace("%", "").replace(',', '.').replace('·', '.').replaceFirst("^[−–]", "-");
    return OptionalDouble.of(Double.parseDouble(plain));
  }

  /** Every row and column of numbers on a page that may stand along an axis. */
  static List<Ticks> on(Page page) {
    List<Word> numbers =
        page.words().stream()
            .filter(w -> w.turn() == Word.Turn.NONE && number(w.text()).isPresent())
            .toList();
    List<Ticks> found = new ArrayList<>();
    for (List<Word> row : grouped(numbers, Word::baseline)) {
      row.sort(Comparator.comparingDouble(w -> w.box().left()));
      runs(row, true, page, found);
    }
    for (List<Word> column : grouped(numbers, w -> w.box().right())) {
      column.sort(Comparator.comparingDouble(w -> -w.baseline()));
      runs(column, false, page, found);
    }
    for (List<Word> column : grouped(numbers, w -> w.box().left())) {
      column.sort(Comparator.comparingDouble(w -> -w.baseline()));
      runs(column, false, page, found);
    }
    return found;
  }

  private static List<List<Word>> grouped(
      List<Word> words, java.util.function.ToDoubleFunction<Word> by) {
    List<Word> sorted = new ArrayList<>(words);
    sorted.sort(Comparator.comparingDouble(by));
    List<List<Word>> groups = new ArrayList<>();
    double last = 0;
    for (Word word : sorted) {
      if (groups.isEmpty() || by.applyAsDouble(word) - last > 1.2) {
        groups.add(new ArrayList<>());
      }
      groups.get(groups.size() - 1).add(word);
      last = by.applyAsDouble(word);
    }
    return groups;
  }

  /** Longest runs of rising numbers whose places fit equal steps or equal ratios. */
  private static void runs(List<Word> words, boolean level, Page page, List<Ticks> found) {
    int from = 0;
    while (from + 2 < words.size()) {
      int to = words.size();
      boolean taken = false;
      while (to - from >= 3 && !taken) {
        List<Tick> ticks = ticks(words.subList(from, to), level, page);
        if (isRising(ticks) && AxisFit.of(ticks).worst() < PLACE_OFF) {
          found.add(new Ticks(level, ticks));
          taken = true;
        } else {
          to--;
        }
      }
      from = taken ? to : from + 1;
    }
  }

  private static boolean isRising(List<Tick> ticks) {
    for (int i = 1; i < ticks.size(); i++) {
      if (ticks.get(i).value() <= ticks.get(i - 1).value()) {
        return false;
      }
    }
    return true;
  }

  private static List<Tick> ticks(List<Word> words, boolean level, Page page) {
    List<Tick> ticks = new ArrayList<>();
    for (Word word : words) {
      double at = level ? word.box().middle() : word.baseline() - 0.35 * word.size();
      ticks.add(new Tick(number(word.text()).orElseThrow(), snapped(at, word, level, page), word));
    }
    return ticks;
  }

  /** The stroke beside a number, if there is one, is nearer to the truth than its middle. */
  private static double snapped(double at, Word word, boolean level, Page page) {
    double best = at;
    double nearest = 2.5;
    for (DrawnPath path : page.paths()) {
      if (path.points().size() > 2 || path.filled()) {
        continue;
      }
      Point a = path.points().get(0);
      Point b = path.points().get(1);
      double along = level ? a.x() : a.y();
      double across = level ? Math.abs(a.x() - b.x()) : Math.abs(a.y() - b.y());
      double length = level ? Math.abs(a.y() - b.y()) : Math.abs(a.x() - b.x());
      double away =
          level
              ? word.box().top() - Math.max(a.y(), b.y())
              : Math.min(
                  Math.abs(Math.min(a.x(), b.x()) - word.box().right()),
                  Math.abs(word.box().left() - Math.max(a.x(), b.x())));
      boolean stroke = across < 0.2 && length >= 1 && length <= 12 && away > -3 && away < 14;
      if (stroke && Math.abs(along - at) < nearest) {
        nearest = Math.abs(along - at);
        best = along;
      }
    }
    return best;
  }
}
