package gapwise.sentence;

import java.util.Map;

/**
 * The catalogue of the sentences people read, in sentences.properties, so that all can be read in
 * one sitting; filled here and nowhere else. Values come worded already, with units and rounding.
 */
public final class Sentences {
  private static final Catalogue ALL =
      Catalogue.of(Catalogue.lines(Sentences.class, "sentences.properties"));

  private Sentences() {}

  /** All of them by name. */
  static Map<String, Template> all() {
    return ALL.all();
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
    return ALL.say(name, values);
  }
}
