package gapwise.sentence;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The catalogue of the sentences people read, in sentences.properties, so that all can be read in
 * one sitting; filled here and nowhere else. Values come worded already, with units and rounding.
 */
public final class Sentences {
  private static final Map<String, Template> ALL = read();

  private Sentences() {}

  private static Map<String, Template> read() {
    Properties lines = new Properties();
    try (Reader in =
        new InputStreamReader(
            Sentences.class.getResourceAsStream("sentences.properties"), StandardCharsets.UTF_8)) {
      lines.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException("the catalogue of sentences cannot be read", e);
    }
    Map<String, Template> all = new TreeMap<>();
    lines
        .stringPropertyNames()
        .forEach(name -> all.put(name, Template.of(lines.getProperty(name))));
    return Collections.unmodifiableMap(all);
  }

  /** All of them by name. */
  static Map<String, Template> all() {
    return ALL;
  }

  /** A sentence without places. */
  public static String say(String name) {
    return say(name, Map.of());
  }

  /**
   * A sentence with its places filled.
   *
   * @param values a text, or a whole number, for each place
   * @throws IllegalArgumentException if there is no such sentence, a place has no value, or a value
   *     has no place
   */
  public static String say(String name, Map<String, ?> values) {
    Template template = ALL.get(name);
    if (template == null) {
      throw new IllegalArgumentException("the catalogue has no sentence '" + name + "'");
    }
    Set<String> given = new TreeSet<>(values.keySet());
    if (!given.equals(template.places())) {
      throw new IllegalArgumentException(
          "the sentence '" + name + "' has places " + template.places() + ", given were " + given);
    }
    return template.filled(values);
  }
}
