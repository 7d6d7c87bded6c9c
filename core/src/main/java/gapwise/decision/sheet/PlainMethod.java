package gapwise.decision.sheet;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.evidence.vocabulary.Method;
import java.util.Map;
import java.util.Objects;

/**
 * A method in plain words, every method in the same parts. No number stands in them.
 *
 * @param name what patients may call it
 * @param is what is done
 * @param asks what it asks of the patient
 * @param wrong what may go wrong
 * @param unknown what is not known of it, to follow "Not known:"
 * @param operations 1, or 2 where at least one more operation is planned from the start
 */
public record PlainMethod(
    String name, String is, String asks, String wrong, String unknown, int operations) {
  private static final Map<String, PlainMethod> ALL =
      Plain.read("methods.json", "method", PlainMethod::read);

  public PlainMethod {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(is, "is");
    Objects.requireNonNull(asks, "asks");
    Objects.requireNonNull(wrong, "wrong");
    Objects.requireNonNull(unknown, "unknown");
    if (operations < 1 || operations > 2) {
      throw new IllegalArgumentException("operations must be 1 or 2, were " + operations);
    }
  }

  private static PlainMethod read(JsonNode node) {
    return new PlainMethod(
        node.required("name").asText(),
        node.required("is").asText(),
        node.required("asks").asText(),
        node.required("wrong").asText(),
        node.required("unknown").asText(),
        node.required("operations").asInt());
  }

  /**
   * The words for a method.
   *
   * @throws IllegalArgumentException when nobody wrote them
   */
  public static PlainMethod of(Method method) {
    return Plain.get(ALL, method.code());
  }
}
