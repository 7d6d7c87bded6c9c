package gapwise.figure.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How wide text is, from the typeface that comes with the program and not from the fonts of the
 * machine, so that a drawing has the same bytes everywhere.
 */
public final class TextMeasure {
  private static final Pattern YEAR_AT_END = Pattern.compile(" [0-9]{4}[a-z]?$");

  /** A blank, four digits and a letter. */
  private static final int LONGEST_YEAR = 6;

  private static final Pattern SPACES = Pattern.compile("\\s+");

  /** More than stands in a few lines of any medium. */
  private static final int MOST_LETTERS_IN_FEW_LINES = 2000;

  private TextMeasure() {}

  /** Width of the text in the unit of {@code size}. */
  static double width(String text, double size, boolean bold) {
    Face face = face(bold);
    return face.width(face.units(text), size);
  }

  private static Face face(boolean bold) {
    return bold ? Face.BOLD : Face.REGULAR;
  }

  /**
   * The text broken at spaces into lines no wider than {@code room}; longer words are cut, and so
   * is a text of endless length. Each letter is measured a few times, however long the text.
   */
  public static List<String> wrap(String text, Lettering lettering, double room) {
    Face face = face(lettering.bold());
    double size = lettering.size();
    long space = face.units(' ');
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    long taken = 0;
    for (String word : SPACES.split(Words.atMost(text.strip(), Words.IN_A_TEXT), -1)) {
      long needed = face.units(word);
      long joined = line.isEmpty() ? needed : taken + space + needed;
      if (face.width(joined, size) <= room) {
        line.append(line.isEmpty() ? "" : " ").append(word);
        taken = joined;
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line.toString());
        line.setLength(0);
      }
      int from = 0;
      while (face.width(needed, size) > room && word.offsetByCodePoints(from, 1) < word.length()) {
        String head = head(word, from, lettering, room);
        lines.add(head);
        needed -= face.units(head);
        from += head.length();
        if (from == word.length()) {
          break;
        }
      }
      line.append(word, from, word.length());
      taken = needed;
    }
    lines.add(line.toString());
    return List.copyOf(lines);
  }

  /** As {@link #wrap}, with at most {@code most} lines; the last then ends in an ellipsis. */
  public static List<String> wrap(String text, Lettering lettering, double room, int most) {
    List<String> lines = wrap(beginning(text), lettering, room);
    if (lines.size() <= most) {
      return lines;
    }
    List<String> kept = new ArrayList<>(lines.subList(0, most - 1));
    kept.add(shorten(String.join(" ", lines.subList(most - 1, lines.size())), lettering, room));
    return List.copyOf(kept);
  }

  /** As much of a text as few lines can hold, and a year at its end. */
  private static String beginning(String text) {
    if (text.length() <= MOST_LETTERS_IN_FEW_LINES) {
      return text;
    }
    Matcher year = YEAR_AT_END.matcher(text.substring(text.length() - LONGEST_YEAR));
    return Words.atMost(text, MOST_LETTERS_IN_FEW_LINES) + (year.find() ? year.group() : "");
  }

  /** The text, or as much of its beginning as fits with an ellipsis; a year at its end stays. */
  public static String shorten(String text, Lettering lettering, double room) {
    if (lettering.width(text) <= room) {
      return text;
    }
    Matcher year = YEAR_AT_END.matcher(text);
    if (year.find() && lettering.width(year.group()) < room / 3) {
      String before = text.substring(0, year.start());
      return shorten(before, lettering, room - lettering.width(year.group())) + year.group();
    }
    return head(text, 0, lettering, room - lettering.width("\u2026")).stripTrailing() + "\u2026";
  }

  /** Longest part from a place on that fits, at least one letter. */
  private static String head(String text, int from, Lettering lettering, double room) {
    int end = text.offsetByCodePoints(from, 1);
    double taken = lettering.width(text.substring(from, end));
    while (end < text.length()) {
      int next = text.offsetByCodePoints(end, 1);
      taken += lettering.width(text.substring(end, next));
      if (taken > room) {
        break;
      }
      end = next;
    }
    return text.substring(from, end);
  }
}
