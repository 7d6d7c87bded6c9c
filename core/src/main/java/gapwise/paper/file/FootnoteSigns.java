package gapwise.paper.file;

import gapwise.paper.Box;
import gapwise.paper.Word;
import gapwise.paper.Word.Mark;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Sets apart the signs behind a number or word that point to a footnote and are raised by their own
 * shape: daggers, asterisks, and Unicode's raised letters. Raised digits behind a unit stay, since
 * cm² is no footnote.
 */
final class FootnoteSigns {
  private static final String RAISED =
      "\u00B9\u00B2\u00B3\u2070-\u207E\u1D2C-\u1D6A\u1D9C-\u1DBF\u02B0-\u02B8\u02E1-\u02E4";

  private static final Pattern BEHIND =
      Pattern.compile("^(.*?[^\\s*†‡§¶‖#" + RAISED + "])([*†‡§¶‖#" + RAISED + "]+)([,;:.)\\]]*)$");

  /** Ten to a power, and a unit squared or cubed. */
  private static final Pattern POWER =
      Pattern.compile("(?:.*[×x·/]|^)10|.*(?:^|[^A-Za-z])(?:k?g|[kcm]?m|mol|s|in|ft|U)");

  private FootnoteSigns() {}

  static void set(Word word, List<Word> found) {
    Matcher behind = BEHIND.matcher(word.text());
    if (!behind.matches() || isPower(behind.group(1), behind.group(2))) {
      found.add(word);
      return;
    }
    Box box = word.box();
    double letters = word.text().length();
    double end = box.left() + box.width() * behind.group(1).length() / letters;
    double tail = box.right() - box.width() * behind.group(3).length() / letters;
    Mark mark =
        new Mark(behind.group(2), new Box(end, box.top(), Math.max(end, tail), box.centre()));
    List<Mark> marks = new ArrayList<>(word.marks());
    marks.add(mark);
    Word host =
        word.withText(
            behind.group(1) + behind.group(3),
            tail < box.right() ? box : new Box(box.left(), box.top(), end, box.bottom()));
    found.add(
        new Word(
            host.text(),
            host.box(),
            host.baseline(),
            host.size(),
            host.turn(),
            host.bold(),
            host.colour(),
            host.breaks(),
            marks));
  }

  /** Whether raised digits behind a text are an exponent. */
  static boolean isPower(String text, String raised) {
    return raised.matches("[-−+]?[0-9\u00B9\u00B2\u00B3\u2070-\u207B]+")
        && POWER.matcher(text).matches();
  }
}
