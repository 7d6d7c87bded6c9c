package gapwise.printed;

import gapwise.evidence.unit.Unit;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;

/** The words that stand beside numbers, out of {@code words.properties}. */
final class Lexicon {
  private static final String UNIT = "unit:";
  private static final Map<String, Statistic> STATISTICS = new HashMap<>();
  private static final Map<String, Unit> UNITS = new HashMap<>();

  static {
    read().forEach(Lexicon::enter);
  }

  private Lexicon() {}

  private static Properties read() {
    Properties words = new Properties();
    try (InputStreamReader in =
        new InputStreamReader(
            Objects.requireNonNull(
                Lexicon.class.getResourceAsStream("words.properties"), "words.properties"),
            StandardCharsets.UTF_8)) {
      words.load(in);
    } catch (IOException unreadable) {
      throw new UncheckedIOException("words.properties cannot be read", unreadable);
    }
    return words;
  }

  private static void enter(Object word, Object meaning) {
    String key = word.toString();
    String said = meaning.toString();
    if (said.startsWith(UNIT)) {
      UNITS.put(key, Unit.ofSymbol(said.substring(UNIT.length())));
    } else {
      STATISTICS.put(key, Statistic.valueOf(said));
    }
  }

  static Optional<Statistic> statistic(String word) {
    return Optional.ofNullable(STATISTICS.get(word));
  }

  static Optional<Unit> unit(String word) {
    return Optional.ofNullable(UNITS.get(word));
  }
}
