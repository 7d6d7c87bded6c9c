package gapwise.paper.table;

import gapwise.paper.Word;
import java.util.List;

/** The text of a cell whose words may stand on several lines. */
final class CellText {
  private CellText() {}

  /** Words joined; a hyphen at a line's end stays, since it may belong to the word. */
  static String of(List<Word> words) {
    StringBuilder text = new StringBuilder();
    Word before = null;
    for (Word word : words) {
      if (before != null && !goesOn(before, word)) {
        text.append(' ');
      }
      text.append(word.text());
      before = word;
    }
    return text.toString();
  }

  private static boolean goesOn(Word before, Word word) {
    boolean newLine = word.baseline() - before.baseline() > 0.5 * before.size();
    boolean hyphen = before.text().length() > 1 && before.text().matches(".*[\\p{L}][-\u2010]");
    return before.breaks() || newLine && hyphen;
  }
}
