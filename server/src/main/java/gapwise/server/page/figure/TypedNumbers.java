package gapwise.server.page.figure;

import static gapwise.sentence.Sentences.say;

import gapwise.paper.trace.DataPoint;
import gapwise.problem.Problems;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/** Numbers as people type them: a full stop or a comma before decimals. */
final class TypedNumbers {
  private static final Pattern NUMBER = Pattern.compile("[-−]?\\d{1,9}([.,]\\d{1,20})?");
  private static final Pattern WHOLE = Pattern.compile("\\d{1,6}");
  private static final Pattern BETWEEN = Pattern.compile("[\\s;]+");

  /** What is wrong with lines is told of so many; the others are mostly alike. */
  private static final int MOST_TOLD = 5;

  private TypedNumbers() {}

  static OptionalDouble number(String text) {
    return NUMBER.matcher(text).matches()
        ? OptionalDouble.of(Double.parseDouble(text.replace(',', '.').replace('−', '-')))
        : OptionalDouble.empty();
  }

  /** A count that may be left out; what is none is told. */
  static OptionalInt whole(String name, String text, String what, Problems problems) {
    if (WHOLE.matcher(text).matches()) {
      return OptionalInt.of(Integer.parseInt(text));
    }
    if (!text.isEmpty()) {
      problems.add(
          name, "not-a-whole-number", say("figure.not-whole", Map.of("what", what, "text", text)));
    }
    return OptionalInt.empty();
  }

  /** A number that may be left out; what is none is told. */
  static OptionalDouble number(String name, String text, String what, Problems problems) {
    OptionalDouble number = number(text);
    if (number.isEmpty() && !text.isEmpty()) {
      problems.add(
          name, "not-a-number", say("figure.not-number", Map.of("what", what, "text", text)));
    }
    return number;
  }

  /** Two numbers a line. */
  static List<DataPoint> pairs(String name, String text, int most, Problems problems) {
    List<String> lines = text.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
    if (lines.size() > most) {
      problems.add(
          name,
          "too-many-lines",
          say("figure.too-many-lines", Map.of("found", lines.size(), "most", most)));
      return List.of();
    }
    List<DataPoint> pairs = new ArrayList<>();
    int wrong = 0;
    for (int at = 0; at < lines.size(); at++) {
      String[] parts = BETWEEN.split(lines.get(at));
      OptionalDouble first = number(parts[0]);
      OptionalDouble second = parts.length == 2 ? number(parts[1]) : OptionalDouble.empty();
      if (first.isPresent() && second.isPresent()) {
        pairs.add(new DataPoint(first.getAsDouble(), second.getAsDouble()));
      } else if (wrong++ < MOST_TOLD) {
        String shown = lines.get(at).substring(0, Math.min(40, lines.get(at).length()));
        problems.add(
            name,
            "not-two-numbers",
            say("figure.not-two-numbers", Map.of("line", Integer.toString(at + 1), "text", shown)));
      }
    }
    return pairs;
  }

  /** Single numbers between blanks. */
  static List<Double> list(String name, String text, int most, Problems problems) {
    List<Double> numbers = new ArrayList<>();
    int before = problems.size();
    for (String part : BETWEEN.split(text)) {
      if (!part.isEmpty() && problems.size() < before + MOST_TOLD) {
        number(name, part, say("figure.what-stroke"), problems).ifPresent(numbers::add);
      }
    }
    if (numbers.size() > most) {
      problems.add(
          name,
          "too-many-lines",
          say("figure.too-many-lines", Map.of("found", numbers.size(), "most", most)));
      return List.of();
    }
    return numbers;
  }
}
