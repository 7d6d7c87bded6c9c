package gapwise.search;

import static gapwise.sentence.Sentences.say;

import java.util.List;
import java.util.Map;
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
      return say(
          "wording.words-nowhere", Map.of("number", words.size(), "words", quoted(words, " and ")));
    }
    String words = quoted(this.words, " and ");
    return nowhere.isEmpty()
        ? say("wording.words-apart", Map.of("words", words))
        : say(
            "wording.words-apart-some-nowhere",
            Map.of("words", words, "nowhere", quoted(nowhere, ", ")));
  }

  private static String quoted(List<String> words, String between) {
    return words.stream()
        .map(word -> say("wording.quoted", Map.of("words", word)))
        .collect(Collectors.joining(between));
  }
}
