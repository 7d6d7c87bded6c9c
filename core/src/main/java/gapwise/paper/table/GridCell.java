package gapwise.paper.table;

import gapwise.paper.Box;
import gapwise.paper.Word;
import gapwise.paper.Word.Mark;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A cell of a table.
 *
 * @param text words with single spaces, without raised marks; empty for an empty cell
 * @param words as they stand on the page, in reading order
 * @param page from 1
 * @param box around the words and their marks; absent for an empty cell
 * @param columns how many columns it takes, at least 1; those after the first hold empty cells
 * @param rows how many rows it takes, at least 1
 */
public record GridCell(
    String text, List<Word> words, int page, Optional<Box> box, int columns, int rows) {
  public GridCell {
    words = List.copyOf(words);
    Objects.requireNonNull(text, "text");
    Objects.requireNonNull(box, "box");
    if (columns < 1 || rows < 1) {
      throw new IllegalArgumentException("a cell takes at least one column and row");
    }
  }

  /** An empty cell. */
  public static GridCell empty(int page) {
    return new GridCell("", List.of(), page, Optional.empty(), 1, 1);
  }

  static GridCell of(List<Word> words, int page, int columns) {
    if (words.isEmpty()) {
      return empty(page);
    }
    return new GridCell(
        CellText.of(words),
        words,
        page,
        Optional.of(Box.around(words.stream().map(Word::wholeBox).toList())),
        columns,
        1);
  }

  GridCell overRows(int count) {
    return new GridCell(text, words, page, box, columns, count);
  }

  /** Whether nothing stands in it. */
  public boolean isEmpty() {
    return words.isEmpty();
  }

  /** Raised marks of its words, such as those that point to a footnote. */
  public List<Mark> marks() {
    List<Mark> marks = new ArrayList<>();
    words.forEach(word -> marks.addAll(word.marks()));
    return List.copyOf(marks);
  }
}
