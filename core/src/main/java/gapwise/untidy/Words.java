package gapwise.untidy;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Words of headers, folded so that spelling, number and accents do not matter. */
final class Words {
  private Words() {}

  /** The folded words of a text. */
  static List<String> of(String text) {
    List<String> words = new ArrayList<>();
    for (String word : plain(text).split("[^\\p{L}0-9#]+", -1)) {
      if (!word.isEmpty()) {
        words.add(stem(word));
      }
    }
    return words;
  }

  /**
   * A header as it is found again: folded words in their order, with their statistics and units.
   */
  static String folded(String header) {
    return plain(header).replaceAll("[^\\p{L}0-9%#±]+", " ").strip();
  }

  private static String plain(String text) {
    String apart = Normalizer.normalize(text, Normalizer.Form.NFKD);
    return apart.replaceAll("\\p{M}", "").toLowerCase(Locale.ROOT).replace("non-union", "nonunion");
  }

  private static String stem(String word) {
    String stem = word.replace("iz", "is").replace("aem", "em").replace("tre", "ter");
    if (stem.length() > 3
        && stem.endsWith("s")
        && !stem.endsWith("ss")
        && !stem.endsWith("us")
        && !stem.endsWith("is")) {
      stem = stem.substring(0, stem.length() - 1);
    }
    return stem;
  }
}
