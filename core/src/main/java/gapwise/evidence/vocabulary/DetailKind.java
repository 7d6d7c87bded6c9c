package gapwise.evidence.vocabulary;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A detail of a method or a characteristic of patients that an arm may carry; the vocabularies are
 * the resources {@code method-details.json} and {@code characteristics.json}.
 *
 * @param code stable kebab-case code; its template column is the same with underscores
 * @param label name in full with its unit
 * @param values the words allowed; empty when any words or numbers are
 * @param numeric whether a number is expected
 * @param warnBelow doubtful below this
 * @param warnAbove doubtful above this
 * @param errorBelow impossible below this
 * @param errorAbove impossible above this
 */
public record DetailKind(
    String code,
    String label,
    List<String> values,
    boolean numeric,
    OptionalDouble warnBelow,
    OptionalDouble warnAbove,
    OptionalDouble errorBelow,
    OptionalDouble errorAbove)
    implements Coded {

  private static final Vocabulary<DetailKind> OF_METHODS =
      Vocabulary.read("method-details.json", DetailKind::read);
  private static final Vocabulary<DetailKind> OF_PATIENTS =
      Vocabulary.read("characteristics.json", DetailKind::read);

  public DetailKind {
    values = List.copyOf(values);
  }

  private static DetailKind read(JsonNode node) {
    List<String> values = new ArrayList<>();
    node.path("values").forEach(value -> values.add(value.asText()));
    return new DetailKind(
        node.required("code").asText(),
        node.required("label").asText(),
        values,
        node.path("numeric").asBoolean(),
        number(node, "warnBelow"),
        number(node, "warnAbove"),
        number(node, "errorBelow"),
        number(node, "errorAbove"));
  }

  private static OptionalDouble number(JsonNode node, String field) {
    return node.has(field) ? OptionalDouble.of(node.get(field).asDouble()) : OptionalDouble.empty();
  }

  /** The label without what it explains in brackets. */
  public String shortLabel() {
    int bracket = label.indexOf(" (");
    return bracket < 0 ? label : label.substring(0, bracket);
  }

  /** The same as a heading, with a capital letter. */
  public String heading() {
    String words = shortLabel();
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  /** Details of methods. */
  public static Vocabulary<DetailKind> ofMethods() {
    return OF_METHODS;
  }

  /** Characteristics of patients. */
  public static Vocabulary<DetailKind> ofPatients() {
    return OF_PATIENTS;
  }
}
