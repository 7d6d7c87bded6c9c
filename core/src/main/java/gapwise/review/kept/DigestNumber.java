package gapwise.review.kept;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A number of an answer, in the words in which its page has it.
 *
 * @param name what it is of, unique within the answer
 * @param value the average with its interval, or the sentence; empty where there is none
 * @param counted events of all, or how many were counted; empty where there is none
 * @param rests on how many series of how many studies, how certain; empty where there is none
 */
public record DigestNumber(String name, String value, String counted, String rests) {
  public DigestNumber {
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(counted, "counted");
    Objects.requireNonNull(rests, "rests");
    if (name.isBlank()) {
      throw new IllegalArgumentException("a number has a name");
    }
  }

  /** All of it in one line. */
  public String told() {
    return Stream.of(value, counted, rests)
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining("; "));
  }

  /** The names, in order and each once: a second of one name gets its number behind it. */
  public static List<DigestNumber> named(List<DigestNumber> numbers) {
    Map<String, Integer> seen = new HashMap<>();
    return numbers.stream()
        .map(
            one -> {
              int times = seen.merge(one.name(), 1, Integer::sum);
              return times == 1
                  ? one
                  : new DigestNumber(
                      one.name() + " (" + times + ")", one.value(), one.counted(), one.rests());
            })
        .toList();
  }
}
