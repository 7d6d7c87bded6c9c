package gapwise.screening;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * A text with the words of the protocol marked: the longest word at a place wins. A word is marked
 * where it stands whole, so that "rat" does not mark "rate"; with a star at its end it is marked
 * with any ending, so that "tibia*" marks "tibial" too.
 */
public final class MarkedText {
  private MarkedText() {}

  /** What a stretch of text says of its paper. */
  public enum Kind {
    PLAIN,
    FOR,
    AGAINST
  }

  /** A stretch of text. */
  public record Stretch(Kind kind, String text) {}

  private record Word(Kind kind, String lower, boolean anyEnding) {
    /** Where the word ends that begins at a place; the place itself where it is another one. */
    int end(String text, int at) {
      if (!text.regionMatches(true, at, lower, 0, lower.length())) {
        return at;
      }
      int end = at + lower.length();
      if (anyEnding) {
        while (end < text.length() && Character.isLetter(text.charAt(end))) {
          end++;
        }
      }
      boolean whole = end == text.length() || !Character.isLetterOrDigit(text.charAt(end));
      return whole ? end : at;
    }
  }

  /** The stretches of a text, in order; together they are the text. */
  public static List<Stretch> of(String text, Protocol protocol) {
    List<Word> words = new ArrayList<>();
    protocol.wordsFor().forEach(one -> words.add(word(Kind.FOR, one)));
    protocol.wordsAgainst().forEach(one -> words.add(word(Kind.AGAINST, one)));
    words.sort(Comparator.comparingInt((Word one) -> one.lower().length()).reversed());
    List<Stretch> stretches = new ArrayList<>();
    int plain = 0;
    int at = 0;
    while (at < text.length()) {
      int end = at;
      Kind kind = Kind.PLAIN;
      boolean start = at == 0 || !Character.isLetterOrDigit(text.charAt(at - 1));
      for (Word word : start ? words : List.<Word>of()) {
        end = word.end(text, at);
        if (end > at) {
          kind = word.kind();
          break;
        }
      }
      if (kind == Kind.PLAIN) {
        at++;
        continue;
      }
      if (plain < at) {
        stretches.add(new Stretch(Kind.PLAIN, text.substring(plain, at)));
      }
      stretches.add(new Stretch(kind, text.substring(at, end)));
      at = end;
      plain = end;
    }
    if (plain < text.length()) {
      stretches.add(new Stretch(Kind.PLAIN, text.substring(plain)));
    }
    return List.copyOf(stretches);
  }

  private static Word word(Kind kind, String typed) {
    boolean anyEnding = typed.endsWith("*") && typed.length() > 1;
    String word = anyEnding ? typed.substring(0, typed.length() - 1) : typed;
    return new Word(kind, word.toLowerCase(Locale.ROOT), anyEnding);
  }
}
