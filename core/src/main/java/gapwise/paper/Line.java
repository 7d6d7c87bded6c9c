package gapwise.paper;

import java.util.List;
import java.util.stream.Collectors;

/**
 * Words that stand beside each other on one line of one column.
 *
 * @param words from left to right, at least one
 */
public record Line(List<Word> words) {
  public Line {
    words = List.copyOf(words);
    if (words.isEmpty()) {
      throw new IllegalArgumentException("a line needs a word");
    }
  }

  /** The words with single spaces, without raised marks. */
  public String text() {
    return words.stream().map(Word::text).collect(Collectors.joining(" "));
  }

  /** The box around the words. */
  public Box box() {
    return Box.around(words.stream().map(Word::box).toList());
  }

  /** The size of the first word's letters, points. */
  public double size() {
    return words.get(0).size();
  }

  /** The line that the words stand on, points from the top. */
  public double baseline() {
    return words.get(0).baseline();
  }
}
