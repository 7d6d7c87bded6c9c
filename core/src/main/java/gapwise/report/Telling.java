package gapwise.report;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Collects sentences in paragraphs, and numbers papers in the order in which they are named. */
final class Telling {
  private final List<List<String>> paragraphs = new ArrayList<>();
  private final Set<String> papers = new LinkedHashSet<>();
  private final Set<String> said = new TreeSet<>();

  /** Starts a new paragraph. */
  void paragraph() {
    paragraphs.add(new ArrayList<>());
  }

  /** Says a sentence without places. */
  void say(String name) {
    say(name, Map.of());
  }

  /** Says a sentence. */
  void say(String name, Map<String, ?> values) {
    String text = phrase(name, values);
    paragraphs
        .get(paragraphs.size() - 1)
        .add(Character.toUpperCase(text.charAt(0)) + text.substring(1) + ".");
  }

  /** A part of a sentence without places. */
  String phrase(String name) {
    return phrase(name, Map.of());
  }

  /** A part of a sentence, whose papers are numbered here. */
  String phrase(String name, Map<String, ?> values) {
    said.add(name);
    return MethodSentences.say(name, values, this::numbers);
  }

  private String numbers(List<String> keys) {
    papers.addAll(keys);
    List<String> order = List.copyOf(papers);
    return keys.stream()
        .map(key -> order.indexOf(key) + 1)
        .sorted()
        .map(String::valueOf)
        .collect(Collectors.joining(", ", "[", "]"));
  }

  /** The paragraphs that have a sentence. */
  List<List<String>> paragraphs() {
    return paragraphs.stream().filter(one -> !one.isEmpty()).map(List::copyOf).toList();
  }

  /** The papers in the order of their numbers. */
  List<String> references() {
    return papers.stream().map(key -> Citation.named(key).line()).toList();
  }

  /** The names of all that was said. */
  Set<String> said() {
    return said;
  }
}
