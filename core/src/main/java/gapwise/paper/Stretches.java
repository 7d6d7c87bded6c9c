package gapwise.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Words beside each other on one baseline, cut where the gap between two is wide. */
public final class Stretches {
  private Stretches() {}

  /**
   * Cuts words into stretches, by baseline and then from left to right.
   *
   * @param words that are not turned
   * @param widest gap within a stretch, in parts of the size of the letters
   */
  public static List<Line> of(List<Word> words, double widest) {
    List<Line> stretches = new ArrayList<>();
    for (List<Word> row : rows(words)) {
      List<Word> stretch = new ArrayList<>();
      double end = 0;
      for (Word word : row) {
        if (!stretch.isEmpty() && word.box().left() - end > widest * word.size()) {
          stretches.add(new Line(stretch));
          stretch.clear();
        }
        stretch.add(word);
        end = word.wholeBox().right();
      }
      stretches.add(new Line(stretch));
    }
    return stretches;
  }

  /** Words on one baseline each, from left to right. */
  public static List<List<Word>> rows(List<Word> words) {
    List<Word> sorted = new ArrayList<>(words);
    sorted.sort(Comparator.comparingDouble(Word::baseline));
    List<List<Word>> rows = new ArrayList<>();
    double last = 0;
    for (Word word : sorted) {
      if (rows.isEmpty() || word.baseline() - last > 0.25 * word.size()) {
        rows.add(new ArrayList<>());
        last = word.baseline();
      }
      rows.get(rows.size() - 1).add(word);
    }
    rows.forEach(row -> row.sort(Comparator.comparingDouble(word -> word.box().left())));
    return rows;
  }
}
