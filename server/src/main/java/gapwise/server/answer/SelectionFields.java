package gapwise.server.answer;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.evidence.Coded;
import gapwise.evidence.Vocabulary;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/** Fields of a JSON object, read with every problem noted and none thrown. Not thread-safe. */
final class SelectionFields {
  private final JsonNode json;
  private final String where;
  private final Problems problems = new Problems();

  SelectionFields(JsonNode json, String where) {
    this.json = json;
    this.where = where;
  }

  boolean has(String field) {
    return json.hasNonNull(field);
  }

  void known(List<String> names) {
    if (!json.isObject()) {
      problems.add(where, "wrong-type", "found no object, expected fields and their values");
    }
    json.fieldNames()
        .forEachRemaining(
            name -> {
              if (!names.contains(name)) {
                wrong(
                    name,
                    "unknown-field",
                    "is unknown; expected one of " + String.join(", ", names));
              }
            });
  }

  Optional<String> text(String field) {
    if (!has(field)) {
      return Optional.empty();
    }
    if (!json.get(field).isTextual()) {
      wrong(field, "wrong-type", "found " + json.get(field) + ", expected text");
      return Optional.empty();
    }
    return Optional.of(json.get(field).asText());
  }

  Set<String> texts(String field) {
    Set<String> texts = new LinkedHashSet<>();
    if (!has(field)) {
      return texts;
    }
    if (!json.get(field).isArray()) {
      wrong(field, "wrong-type", "found " + json.get(field) + ", expected a list of texts");
      return texts;
    }
    json.get(field).forEach(one -> texts.add(one.asText()));
    return texts;
  }

  <T extends Coded> Optional<T> word(String field, Vocabulary<T> vocabulary) {
    Optional<String> code = text(field);
    Optional<T> word = code.flatMap(vocabulary::find);
    if (code.isPresent() && word.isEmpty()) {
      unknown(field, code.get(), vocabulary.codes());
    }
    return word;
  }

  Set<String> words(String field, Vocabulary<?> vocabulary) {
    Set<String> codes = texts(field);
    for (String code : List.copyOf(codes)) {
      if (vocabulary.find(code).isEmpty()) {
        unknown(field, code, vocabulary.codes());
      }
    }
    return codes;
  }

  <E extends Enum<E> & Coded> Optional<E> constant(String field, Class<E> vocabulary) {
    Optional<String> code = text(field);
    Optional<E> constant = code.flatMap(text -> Coded.parse(vocabulary, text));
    if (code.isPresent() && constant.isEmpty()) {
      unknown(field, code.get(), Coded.codes(vocabulary));
    }
    return constant;
  }

  <E extends Enum<E> & Coded> Set<E> constants(String field, Class<E> vocabulary) {
    List<E> constants = new ArrayList<>();
    for (String code : texts(field)) {
      Coded.parse(vocabulary, code)
          .ifPresentOrElse(constants::add, () -> unknown(field, code, Coded.codes(vocabulary)));
    }
    return new LinkedHashSet<>(constants);
  }

  OptionalInt year(String field) {
    return whole(field, 1800, 2200);
  }

  OptionalInt whole(String field, int least, int most) {
    if (!has(field)) {
      return OptionalInt.empty();
    }
    JsonNode number = json.get(field);
    if (number.isInt() && number.asInt() >= least && number.asInt() <= most) {
      return OptionalInt.of(number.asInt());
    }
    wrong(
        field,
        "out-of-range",
        "found " + number + ", expected a whole number from " + least + " to " + most);
    return OptionalInt.empty();
  }

  OptionalDouble length(String field) {
    if (!has(field)) {
      return OptionalDouble.empty();
    }
    JsonNode number = json.get(field);
    if (number.isNumber() && number.asDouble() >= 0 && Double.isFinite(number.asDouble())) {
      return OptionalDouble.of(number.asDouble());
    }
    wrong(field, "out-of-range", "found " + number + ", expected centimetres, 0 or more");
    return OptionalDouble.empty();
  }

  void unknown(String field, String found, String expected) {
    wrong(field, "unknown-code", "found '" + found + "', expected one of " + expected);
  }

  void wrong(String field, String code, String message) {
    problems.add(where + "." + field, code, message);
  }

  void throwIfWrong() {
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
  }
}
