package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.databind.JsonNode;

/**
 * A way of treating the bone loss; the vocabulary is the resource {@code methods.json}.
 *
 * @param code stable kebab-case code
 * @param label the name with what tells it from its neighbours, for lists to choose from
 * @param shortLabel the name, wherever the method is spoken of or drawn
 * @param mark shape of its mark in figures
 * @param colour colour of its mark, as #RRGGBB; never the only sign
 * @param frame whether an external frame belongs to it, so that time in a frame is meaningful
 * @param meaning one sentence for people
 */
public record Method(
    String code,
    String label,
    String shortLabel,
    String mark,
    String colour,
    boolean frame,
    String meaning)
    implements Coded {

  private static final Vocabulary<Method> VOCABULARY =
      Vocabulary.read("methods.json", Method::read);

  /**
   * Stands for the groups of a paper together where their methods differ. No entry of the
   * vocabulary: nobody is treated by it, and no value of it is pooled under the name of a method.
   */
  public static final Method SEVERAL =
      new Method(
          "several-methods",
          "Several methods together",
          "Several methods",
          "dot",
          "#5B6472",
          false,
          "One value for groups of several methods together.");

  private static Method read(JsonNode node) {
    return new Method(
        node.required("code").asText(),
        node.required("label").asText(),
        node.required("short").asText(),
        node.required("mark").asText(),
        node.required("colour").asText(),
        node.path("frame").asBoolean(),
        node.required("meaning").asText());
  }

  /** All methods in the order in which lists show them. */
  public static Vocabulary<Method> vocabulary() {
    return VOCABULARY;
  }

  @JsonCreator
  public static Method of(String code) {
    return VOCABULARY.get(code);
  }

  @Override
  @JsonValue
  public String code() {
    return code;
  }

  /** By the code alone, which no two entries share: entries are looked up again and again. */
  @Override
  public int hashCode() {
    return code.hashCode();
  }
}
