package gapwise.evidence;

import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;

/**
 * Where one number was read: the page of a paper, the boxes of its words, and the words as printed.
 *
 * @param column template column that the number fills
 * @param paper which file: the first {@link #PAPER_LETTERS} hexadecimal digits of its SHA-256
 * @param page number of the page, from 1
 * @param boxes where the words stand; at least one
 * @param words as printed; empty where the page has no words, such as a scanned one
 */
public record Reading(String column, String paper, int page, List<PageBox> boxes, String words) {
  /** Digits that name a file; a chance repeat among a million files is below one in 10^16. */
  public static final int PAPER_LETTERS = 32;

  /** Words of one number; a longer text is a sentence and belongs to the words of the row. */
  public static final int MOST_WORDS = 400;

  /** Boxes of one number: words of a line, or of two. */
  public static final int MOST_BOXES = 40;

  /** Pages of a paper; books have more, and are not read so. */
  public static final int MOST_PAGES = 5_000;

  private static final Pattern COLUMN = Pattern.compile("[a-z0-9_]{1,80}");
  private static final Pattern PAPER = Pattern.compile("[0-9a-f]{" + PAPER_LETTERS + "}");

  public Reading {
    // What is empty is left out where records are stored.
    words = Objects.requireNonNullElse(words, "");
    boxes = List.copyOf(boxes);
    if (!COLUMN.matcher(column).matches()) {
      throw new IllegalArgumentException("not a column of the template: '" + column + "'");
    }
    if (!isPaper(paper)) {
      throw new IllegalArgumentException("not the name of a paper: '" + paper + "'");
    }
    if (page < 1 || page > MOST_PAGES) {
      throw new IllegalArgumentException("page must be 1 to " + MOST_PAGES + ", was " + page);
    }
    if (boxes.isEmpty() || boxes.size() > MOST_BOXES) {
      throw new IllegalArgumentException(
          "a place has 1 to " + MOST_BOXES + " boxes, had " + boxes.size());
    }
    if (words.length() > MOST_WORDS) {
      throw new IllegalArgumentException(
          "words must have at most " + MOST_WORDS + " letters, had " + words.length());
    }
  }

  /** Whether a text is the name of a paper. */
  public static boolean isPaper(String text) {
    return PAPER.matcher(text).matches();
  }
}
