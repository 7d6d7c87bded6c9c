package gapwise.sentence;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/** Sentences with places, by name, out of one file of properties. Immutable. */
public final class Catalogue {
  private final Map<String, Template> all;

  /** In the order of their names, and found without a way through it. */
  private Catalogue(SortedMap<String, Template> all) {
    this.all = Collections.unmodifiableMap(new LinkedHashMap<>(all));
  }

  /** The lines of a file, before anything is read into them. */
  public static Map<String, String> lines(Class<?> beside, String file) {
    Properties lines = new Properties();
    try (Reader in =
        new InputStreamReader(beside.getResourceAsStream(file), StandardCharsets.UTF_8)) {
      lines.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(file + ", a catalogue of sentences, cannot be read", e);
    }
    Map<String, String> all = new TreeMap<>();
    lines.stringPropertyNames().forEach(name -> all.put(name, lines.getProperty(name)));
    return all;
  }

  /** The catalogue of these sentences; throws IllegalArgumentException if braces do not match. */
  public static Catalogue of(Map<String, String> sentences) {
    SortedMap<String, Template> all = new TreeMap<>();
    sentences.forEach((name, text) -> all.put(name, Template.of(text)));
    return new Catalogue(all);
  }

  /** All of them by name. */
  Map<String, Template> all() {
    return all;
  }

  /** The names of its sentences. */
  public Set<String> names() {
    return all.keySet();
  }

  /** The places of a sentence; empty if there is no such sentence. */
  public Optional<Set<String>> places(String name) {
    return Optional.ofNullable(all.get(name)).map(Template::places);
  }

  /**
   * A sentence with its places filled.
   *
   * @param values a text, or a whole number, for each place
   * @throws IllegalArgumentException if there is no such sentence, a place has no value, or a value
   *     has no place
   */
  public String say(String name, Map<String, ?> values) {
    Template template = all.get(name);
    if (template == null) {
      throw new IllegalArgumentException("the catalogue has no sentence '" + name + "'");
    }
    if (!template.places().equals(values.keySet())) {
      throw new IllegalArgumentException(
          "the sentence '%s' has places %s, given were %s"
              .formatted(name, template.places(), new TreeSet<>(values.keySet())));
    }
    return template.filled(values);
  }
}
