package gapwise.reference.likeness;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * The name of a journal made ready to be compared.
 *
 * @param words its words in plain letters, without those that abbreviations leave out
 * @param letters the whole name in plain letters, joined
 */
public record JournalName(List<String> words, String letters) {
  /** Words that abbreviations leave out (ISO 4 omits articles, prepositions, conjunctions). */
  private static final Set<String> LEFT_OUT =
      Set.of(
          "the", "of", "and", "in", "on", "for", "de", "der", "die", "das", "du", "des", "del",
          "della", "di", "la", "le", "les", "e", "et", "y", "und", "a", "an", "dell", "do", "da",
          "el", "los", "i", "fur", "voor", "van", "d", "l");

  public JournalName {
    words = List.copyOf(words);
  }

  /** Reads a name as printed, in full or abbreviated. */
  public static JournalName of(String printed) {
    List<String> words = new ArrayList<>();
    for (String word :
        Letters.folded(printed.replace('\'', ' ').replace('\u2019', ' ')).split(" ")) {
      if (!word.isEmpty() && !LEFT_OUT.contains(word)) {
        words.add(word);
      }
    }
    return new JournalName(words, Letters.joined(printed));
  }
}
