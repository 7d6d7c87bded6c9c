package gapwise.printed;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * A printed text made plain: one kind of space, of dash and of plus-minus sign, no marks of
 * footnotes at its end.
 *
 * @param text the text without marks
 * @param marks the marks that were taken off, as they stood; empty for most
 */
record PlainText(String text, String marks) {
  /** Marks of footnotes that are no part of any number or word. */
  private static final Pattern MARKS =
      Pattern.compile("[*†‡§¶#‖¹²³⁰⁴-⁹ᵃ-ᵛᵇᶜ]+$|(?<=[0-9)%])\\[[a-z]\\]$");

  /** A letter glued to a number, where it is no unit. */
  private static final Pattern LETTER = Pattern.compile("(?<=[0-9)%])([abcefg])$");

  private static final Pattern MARK_BEFORE_BRACKET =
      Pattern.compile("(?<=[0-9%])[*†‡§¶ᵃᵇᶜᵈᵉ¹²³⁰⁴-⁹]+(?= ?[(\\[])");

  static PlainText of(String printed) {
    String text =
        printed
            .replaceAll("[\\u00a0\\u2000-\\u200a\\u202f\\u205f\\u3000\\s]+", " ")
            .replaceAll("[\\u00ad\\u200b-\\u200d\\ufeff]", "")
            .replaceAll("[\\u2010-\\u2015\\u2212]", "-")
            .replaceAll("\\+ ?/ ?-|\\+-|∓", "±")
            .replace('·', '.')
            .replace('≤', '<')
            .replace("cm³", "cm3")
            .strip();
    StringBuilder marks = new StringBuilder();
    String bare = MARK_BEFORE_BRACKET.matcher(text).replaceAll("");
    if (!bare.equals(text)) {
      marks.append("raised");
    }
    String before = "";
    while (!before.equals(bare)) {
      before = bare;
      bare = MARKS.matcher(bare).replaceFirst("").strip();
      bare = LETTER.matcher(bare).replaceFirst("").strip();
      marks.append(before, bare.length(), before.length());
    }
    return new PlainText(bare.isEmpty() ? text : bare, bare.isEmpty() ? "" : marks.toString());
  }

  String folded() {
    return text.toLowerCase(Locale.ROOT);
  }
}
