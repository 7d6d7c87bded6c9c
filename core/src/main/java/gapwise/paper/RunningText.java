package gapwise.paper;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Words of pages as one text, each stretch of which leads back to its places. Words parted at a
 * line's end are put together.
 */
public final class RunningText {
  private final String text;
  private final List<Piece> pieces;

  /** A word and where it stands in the text. */
  private record Piece(int from, int to, Page page, Word word) {}

  private RunningText(String text, List<Piece> pieces) {
    this.text = text;
    this.pieces = pieces;
  }

  /**
   * The text of pages in reading order.
   *
   * @param pages in their order
   * @param wanted words to take, such as those outside of tables
   */
  public static RunningText of(List<Page> pages, Wanted wanted) {
    Set<String> known = new HashSet<>();
    for (Page page : pages) {
      page.words().forEach(word -> known.add(bare(word.text())));
    }
    StringBuilder text = new StringBuilder();
    List<Piece> pieces = new ArrayList<>();
    Optional<Word> before = Optional.empty();
    for (Page page : pages) {
      for (Line line : page.lines()) {
        boolean first = true;
        Predicate<Word> take = word -> wanted.takes(page, word);
        for (Word word : line.words().stream().filter(take).toList()) {
          join(text, before, word, first, known);
          pieces.add(new Piece(text.length(), text.length() + word.text().length(), page, word));
          text.append(word.text());
          before = Optional.of(word);
          first = false;
        }
      }
    }
    return new RunningText(text.toString(), List.copyOf(pieces));
  }

  /** Which words belong to a text. */
  @FunctionalInterface
  public interface Wanted {
    /** Whether a word of a page is taken. */
    boolean takes(Page page, Word word);
  }

  private static void join(
      StringBuilder text, Optional<Word> before, Word word, boolean newLine, Set<String> known) {
    if (before.isEmpty()) {
      return;
    }
    String last = before.get().text();
    if (newLine && before.get().breaks()) {
      return;
    }
    boolean hyphen = newLine && last.matches(".*\\p{L}[-\u2010]") && isLower(word.text());
    if (!hyphen) {
      boolean number = newLine && last.matches(".*[0-9][-–]") && word.text().matches("[0-9].*");
      text.append(number ? "" : " ");
      return;
    }
    String stem = last.substring(0, last.length() - 1);
    String[] parts = stem.split("[^\\p{L}]");
    String whole = bare(parts[parts.length - 1] + word.text());
    String hyphenated = bare(last + word.text());
    // The paper's own use elsewhere tells; without it, most hyphens at a line's end are for it.
    if (!known.contains(hyphenated) || known.contains(whole)) {
      text.setLength(text.length() - 1);
    }
  }

  private static boolean isLower(String word) {
    return Character.isLowerCase(word.charAt(0));
  }

  private static String bare(String word) {
    return word.toLowerCase(Locale.ROOT).replaceAll("^[^\\p{L}0-9]+|[^\\p{L}0-9]+$", "");
  }

  /** The text, words parted by single spaces. */
  public String text() {
    return text;
  }

  /**
   * Where a stretch stands: one place a page, of whole words.
   *
   * @param from of the text, the first letter
   * @param to behind the last letter
   */
  public List<Place> places(int from, int to) {
    List<Place> places = new ArrayList<>();
    List<Word> words = new ArrayList<>();
    Page page = null;
    for (Piece piece : pieces) {
      if (piece.to() <= from || piece.from() >= to) {
        continue;
      }
      if (page != null && page != piece.page()) {
        Places.of(page, words).ifPresent(places::add);
        words.clear();
      }
      page = piece.page();
      words.add(piece.word());
    }
    if (page != null) {
      Places.of(Objects.requireNonNull(page), words).ifPresent(places::add);
    }
    return places;
  }
}
