package gapwise.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A word as printed.
 *
 * @param text ligatures as their letters, without raised marks and soft hyphens
 * @param box of the text alone, without its marks
 * @param baseline the line that it stands on: distance from the top, or from the left if turned
 * @param size of its letters, points
 * @param turn which way it runs
 * @param bold whether its typeface says so
 * @param colour of its first letter, red, green and blue as 0xRRGGBB
 * @param breaks whether it ended in a soft hyphen, so that it goes on in the next line
 * @param marks raised letters right behind it, as those that point to a footnote
 */
public record Word(
    String text,
    Box box,
    double baseline,
    double size,
    Turn turn,
    boolean bold,
    int colour,
    boolean breaks,
    List<Mark> marks) {
  /**
   * Raised letters.
   *
   * @param text such as "a" or "a,b"
   */
  public record Mark(String text, Box box) {
    public Mark {
      Objects.requireNonNull(text, "text");
      Objects.requireNonNull(box, "box");
    }
  }

  /** Which way letters follow one another on the page as displayed. */
  public enum Turn {
    /** From left to right, as usual. */
    NONE,
    /** From top to bottom. */
    DOWN,
    /** From right to left, upside down. */
    OVER,
    /** From bottom to top, as beside an axis. */
    UP
  }

  public Word {
    Objects.requireNonNull(box, "box");
    marks = List.copyOf(marks);
    if (text.isBlank()) {
      throw new IllegalArgumentException("a word needs letters");
    }
  }

  /** The word and its marks in one, as a plain copy from the file would give it. */
  public String glued() {
    StringBuilder all = new StringBuilder(text);
    marks.forEach(mark -> all.append(mark.text()));
    return all.toString();
  }

  /** The box of word and marks. */
  public Box wholeBox() {
    Box all = box;
    for (Mark mark : marks) {
      all = all.with(mark.box());
    }
    return all;
  }

  public Word with(Mark mark) {
    List<Mark> more = new ArrayList<>(marks);
    more.add(mark);
    return new Word(text, box, baseline, size, turn, bold, colour, breaks, more);
  }

  public Word on(double line) {
    return new Word(text, box, line, size, turn, bold, colour, breaks, marks);
  }

  public Word withText(String other, Box otherBox) {
    return new Word(other, otherBox, baseline, size, turn, bold, colour, breaks, marks);
  }
}
