package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/**
 * Something that goes with a principal method; the vocabulary is the resource {@code
 * method-parts.json}.
 *
 * @param code stable kebab-case code
 * @param label name in full
 */
public record MethodPart(String code, String label) implements Coded {
  private static final Vocabulary<MethodPart> VOCABULARY =
      Vocabulary.read(
          "method-parts.json",
          node -> new MethodPart(node.required("code").asText(), node.required("label").asText()));

  /** All parts. */
  public static Vocabulary<MethodPart> vocabulary() {
    return VOCABULARY;
  }

  @JsonCreator
  public static MethodPart of(String code) {
    return VOCABULARY.get(code);
  }

  @Override
  @JsonValue
  public String code() {
    return code;
  }
}
