package gapwise.evidence.rule;

import java.text.Normalizer;
import java.util.Locale;

/** Text without what differs between spellings of one name: case, accents, signs, blanks. */
public final class FoldedText {
  private FoldedText() {}

  public static String of(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFD)
        .replaceAll("\\p{M}", "")
        .toLowerCase(Locale.ROOT)
        .replace("ß", "ss")
        .replace("ø", "o")
        .replace("ł", "l")
        .replaceAll("[^\\p{L}\\p{N}]", "");
  }
}
