package gapwise.decision.sheet;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/** How many syllables the words of our own texts have. */
final class Syllables {
  private final Map<String, Integer> counts;

  private Syllables(Map<String, Integer> counts) {
    this.counts = Map.copyOf(counts);
  }

  /** The list that stands beside the texts. */
  static Syllables listed() {
    try (BufferedReader lines =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(
                    Syllables.class.getResourceAsStream("syllables.txt"), "syllables.txt"),
                StandardCharsets.UTF_8))) {
      Map<String, Integer> counts = new HashMap<>();
      lines
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(line -> line.split(" "))
          .forEach(line -> counts.put(line[0], Integer.parseInt(line[1])));
      return new Syllables(counts);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Syllables of a word; 1 for a number in digits.
   *
   * @throws IllegalArgumentException when the word is not listed
   */
  int of(String word) {
    if (word.matches("[0-9]+")) {
      return 1;
    }
    Integer count = counts.get(word.toLowerCase(Locale.ROOT));
    if (count == null) {
      throw new IllegalArgumentException("syllables of '" + word + "' are not listed");
    }
    return count;
  }
}
