package gapwise.search;

import java.util.List;
import java.util.stream.Collectors;

/**
 * Words that no group of patients has all of, so that groups with any of them are taken.
 *
 * @param words the words and phrases as typed, without quotation marks
 * @param nowhere those of them that stand nowhere in the evidence base, whatever the filters
 */
public record LooseWords(List<String> words, List<String> nowhere) {
  public LooseWords {
    words = List.copyOf(words);
    nowhere = List.copyOf(nowhere);
  }

  /** What a person must know before reading what was found, as one or two sentences. */
  public String sentence() {
    if (nowhere.size() == words.size()) {
      return quoted(words) + (words.size() == 1 ? " stands" : " stand") + " nowhere here.";
    }
    String start =
        "No group here has all the words "
            + quoted(words)
            + " together, so groups with any of them are shown.";
    return nowhere.isEmpty()
        ? start
        : start
            + " Found nowhere here: "
            + nowhere.stream().map(LooseWords::quote).collect(Collectors.joining(", "))
            + ".";
  }

  private static String quoted(List<String> words) {
    return words.stream().map(LooseWords::quote).collect(Collectors.joining(" and "));
  }

  private static String quote(String word) {
    return "“" + word + "”";
  }
}
