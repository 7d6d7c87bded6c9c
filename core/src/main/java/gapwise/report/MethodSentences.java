package gapwise.report;

import gapwise.sentence.Catalogue;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The sentences of methods.properties, with the papers that they name. */
final class MethodSentences {
  /** The places into which the numbers of papers are put. */
  private static final String CITATION = "citation";

  private static final Pattern NAMED = Pattern.compile("(?: @[a-z]+-[0-9]{4})+");
  private static final Map<String, List<List<String>>> CITED = new TreeMap<>();
  private static final Catalogue SENTENCES = read();

  private MethodSentences() {}

  private static Catalogue read() {
    Map<String, String> sentences = new TreeMap<>();
    Catalogue.lines(MethodSentences.class, "methods.properties")
        .forEach((name, text) -> sentences.put(name, withPlaces(name, text)));
    return Catalogue.of(sentences);
  }

  private static String withPlaces(String name, String text) {
    List<List<String>> runs = new ArrayList<>();
    Matcher matcher = NAMED.matcher(text);
    StringBuilder changed = new StringBuilder();
    while (matcher.find()) {
      runs.add(List.of(matcher.group().trim().replace("@", "").split(" ")));
      matcher.appendReplacement(changed, " {" + CITATION + runs.size() + "}");
    }
    matcher.appendTail(changed);
    CITED.put(name, List.copyOf(runs));
    return changed.toString();
  }

  /** The names of all sentences and phrases. */
  static Set<String> names() {
    return Collections.unmodifiableSet(SENTENCES.names());
  }

  /** Whether there is one of this name. */
  static boolean has(String name) {
    return SENTENCES.names().contains(name);
  }

  /** The papers that a sentence names, in their order. */
  static List<String> cited(String name) {
    return Objects.requireNonNull(CITED.get(name), name).stream().flatMap(List::stream).toList();
  }

  /**
   * A sentence, without its full stop.
   *
   * @param numbers the papers that stand together as a text
   */
  static String say(String name, Map<String, ?> values, Function<List<String>, String> numbers) {
    Map<String, Object> all = new HashMap<>(values);
    List<List<String>> runs = CITED.getOrDefault(name, List.of());
    for (int i = 0; i < runs.size(); i++) {
      all.put(CITATION + (i + 1), numbers.apply(runs.get(i)));
    }
    return SENTENCES.say(name, all);
  }
}
