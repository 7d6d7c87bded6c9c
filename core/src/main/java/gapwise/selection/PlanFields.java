package gapwise.selection;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Nearest;
import gapwise.evidence.vocabulary.Vocabulary;
import gapwise.problem.Problems;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Reads the fields of one object of a plan. What is wrong goes to the list of problems with the
 * place of the field, and reads as if it were not there.
 */
final class PlanFields {
  private final JsonNode object;
  private final String where;
  private final Problems problems;

  PlanFields(JsonNode object, String where, Problems problems) {
    this.object = object;
    this.where = where;
    this.problems = problems;
    if (!object.isObject()) {
      problems.add(where, "wrong-type", "an object is expected here, with a field outcome");
    }
  }

  void requireOnly(List<String> names) {
    for (Iterator<String> given = object.fieldNames(); given.hasNext(); ) {
      String name = given.next();
      if (!names.contains(name)) {
        problems.add(
            where + "." + name,
            "unknown-field",
            "there is no field '" + name + "' here; there are " + String.join(", ", names));
      }
    }
  }

  String text(String field) {
    JsonNode value = object.path(field);
    if (value.isMissingNode()) {
      return "";
    }
    if (!value.isTextual()) {
      wrongType(at(field), "a text", value);
    }
    return value.asText("");
  }

  Set<String> texts(String field) {
    Set<String> texts = new LinkedHashSet<>();
    items(field, false).forEach(item -> texts.add(item.text()));
    return texts;
  }

  <T extends Coded> Optional<T> vocabularyWord(
      String field, Vocabulary<T> vocabulary, boolean required) {
    JsonNode value = object.path(field);
    if (value.isMissingNode()) {
      if (required && object.isObject()) {
        problems.add(
            at(field),
            "missing-field",
            "a code is expected here, one of " + String.join(", ", vocabulary.codes()));
      }
      return Optional.empty();
    }
    if (!value.isTextual()) {
      wrongType(at(field), "a code", value);
      return Optional.empty();
    }
    Optional<T> found = vocabulary.find(value.asText());
    if (found.isEmpty()) {
      unknown(at(field), value.asText(), vocabulary.codes());
    }
    return found;
  }

  <T extends Coded> Set<String> vocabularyWords(String field, Vocabulary<T> vocabulary) {
    return found(
        field,
        code -> vocabulary.find(code).isPresent() ? Optional.of(code) : Optional.empty(),
        vocabulary.codes());
  }

  /** What the codes of a list mean. */
  <T> Set<T> found(String field, Function<String, Optional<T>> meaning, List<String> known) {
    Set<T> found = new LinkedHashSet<>();
    for (Item item : items(field, false)) {
      meaning
          .apply(item.text())
          .ifPresentOrElse(found::add, () -> unknown(item.where(), item.text(), known));
    }
    return found;
  }

  /** A list of codes, or one code alone. */
  <E extends Enum<E> & Coded> Set<E> words(String field, Class<E> vocabulary) {
    Set<E> found = EnumSet.noneOf(vocabulary);
    for (Item item : items(field, true)) {
      exact(vocabulary, item.text())
          .ifPresentOrElse(
              found::add, () -> unknown(item.where(), item.text(), Coded.codes(vocabulary)));
    }
    return found;
  }

  <E extends Enum<E> & Coded> Optional<E> word(String field, Class<E> vocabulary) {
    List<String> codes =
        EnumSet.allOf(vocabulary).stream().map(Coded::code).collect(Collectors.toList());
    return oneOf(field, codes).flatMap(code -> exact(vocabulary, code));
  }

  private static <E extends Enum<E> & Coded> Optional<E> exact(Class<E> vocabulary, String code) {
    return Coded.parse(vocabulary, code).filter(constant -> constant.code().equals(code));
  }

  Optional<String> oneOf(String field, Collection<String> codes) {
    JsonNode value = object.path(field);
    if (value.isMissingNode()) {
      return Optional.empty();
    }
    if (!value.isTextual() || !codes.contains(value.asText())) {
      unknown(at(field), value.asText(value.toString()), codes);
      return Optional.empty();
    }
    return Optional.of(value.asText());
  }

  /** A whole number that is not below a least one. */
  OptionalInt integer(String field, int least) {
    JsonNode value = object.path(field);
    if (value.isMissingNode()) {
      return OptionalInt.empty();
    }
    boolean whole =
        value.isNumber() && value.canConvertToExactIntegral() && value.canConvertToInt();
    if (!whole || value.intValue() < least) {
      wrongType(at(field), "a whole number of " + least + " or more", value);
      return OptionalInt.empty();
    }
    return OptionalInt.of(value.intValue());
  }

  /** A length in centimetres, 0 or more. */
  OptionalDouble length(String field) {
    return notNegative(field, "a number of centimetres");
  }

  /**
   * A number, 0 or more.
   *
   * @param what what is expected, in words
   */
  OptionalDouble notNegative(String field, String what) {
    JsonNode value = object.path(field);
    if (value.isMissingNode()) {
      return OptionalDouble.empty();
    }
    if (!value.isNumber() || !Double.isFinite(value.doubleValue()) || value.doubleValue() < 0) {
      wrongType(at(field), what + ", 0 or more,", value);
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(value.doubleValue());
  }

  private record Item(String where, String text) {}

  private List<Item> items(String field, boolean oneAlone) {
    JsonNode value = object.path(field);
    List<Item> items = new ArrayList<>();
    if (value.isTextual() && oneAlone && !value.asText().isBlank()) {
      items.add(new Item(at(field), value.asText()));
    } else if (value.isArray()) {
      for (int i = 0; i < value.size(); i++) {
        String place = at(field) + "[" + i + "]";
        if (value.get(i).isTextual() && !value.get(i).asText().isBlank()) {
          items.add(new Item(place, value.get(i).asText()));
        } else {
          wrongType(place, "a text", value.get(i));
        }
      }
    } else if (!value.isMissingNode()) {
      wrongType(at(field), "a list of texts", value);
    }
    return items;
  }

  private String at(String field) {
    return where + "." + field;
  }

  private void wrongType(String place, String expected, JsonNode found) {
    problems.add(
        place, "wrong-type", expected + " is expected here, " + shortened(found) + " was found");
  }

  private void unknown(String place, String found, Collection<String> known) {
    problems.add(
        place,
        "unknown-value",
        "'"
            + shortened(found)
            + "' is not known here; "
            + Nearest.expected(shortened(found), known));
  }

  /** Enough of what was found to know it again; a plan may hold anything of any length. */
  private static String shortened(Object found) {
    String text = found.toString();
    return text.length() <= 60 ? text : text.substring(0, 60) + "...";
  }
}
