package gapwise.supplement;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Holds one result against another, field by field. */
final class Comparison {
  /** More are counted and not listed. */
  private static final int MOST_LISTED = 1_000;

  /** Letters of a text that are shown. */
  private static final int LONGEST_SHOWN = 120;

  private final double tolerance;
  private final Set<String> passedOver;
  private final List<Difference> numbers = new ArrayList<>();
  private final List<Difference> words = new ArrayList<>();
  private int compared;

  /**
   * @param tolerance by how much of its size a number may differ; 0 for not at all
   * @param passedOver fields that are not compared
   */
  Comparison(double tolerance, Set<String> passedOver) {
    this.tolerance = tolerance;
    this.passedOver = Set.copyOf(passedOver);
  }

  /** Compares two results. */
  Comparison of(JsonNode before, JsonNode after) {
    compare("", before, after);
    return this;
  }

  /** Numbers that differ, are gone, or stand where there was something else. */
  List<Difference> numbers() {
    return List.copyOf(numbers);
  }

  /** Texts that differ, and fields that were not there before. */
  List<Difference> words() {
    return List.copyOf(words);
  }

  /** How many numbers were compared. */
  int compared() {
    return compared;
  }

  private void compare(String field, JsonNode before, JsonNode after) {
    if (passedOver.contains(field)) {
      return;
    }
    if (before.isObject() && after.isObject()) {
      Set<String> names = new TreeSet<>();
      before.fieldNames().forEachRemaining(names::add);
      after.fieldNames().forEachRemaining(names::add);
      for (String name : names) {
        compare(field.isEmpty() ? name : field + "." + name, before.path(name), after.path(name));
      }
    } else if (before.isArray() && after.isArray()) {
      int most = Math.max(before.size(), after.size());
      for (int i = 0; i < most; i++) {
        compare(field + "[" + i + "]", before.path(i), after.path(i));
      }
    } else if (before.isNumber() && after.isNumber()) {
      compared++;
      if (!alike(before.asDouble(), after.asDouble())) {
        note(numbers, field, before, after);
      }
    } else if (!before.equals(after)) {
      note(holdsNumbers(before) ? numbers : words, field, before, after);
    }
  }

  private boolean alike(double before, double after) {
    return before == after
        || Math.abs(before - after) <= tolerance * Math.max(Math.abs(before), Math.abs(after));
  }

  private static boolean holdsNumbers(JsonNode node) {
    if (node.isNumber()) {
      return true;
    }
    for (Iterator<JsonNode> all = node.elements(); all.hasNext(); ) {
      if (holdsNumbers(all.next())) {
        return true;
      }
    }
    return false;
  }

  private static void note(List<Difference> list, String field, JsonNode before, JsonNode after) {
    if (list.size() < MOST_LISTED) {
      list.add(new Difference(field, shown(before), shown(after)));
    }
  }

  private static String shown(JsonNode node) {
    if (node.isMissingNode()) {
      return Difference.NOTHING;
    }
    String text = node.toString();
    return text.length() <= LONGEST_SHOWN ? text : text.substring(0, LONGEST_SHOWN) + "...";
  }
}
