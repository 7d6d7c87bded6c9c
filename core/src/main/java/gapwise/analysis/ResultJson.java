package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Results as JSON. Fields stand in the order of {@link Result}; whole numbers are written without a
 * fraction, all others with all digits. Should a number be infinite or undefined all the same, it
 * is left out and a warning says so: JSON has no such numbers.
 */
final class ResultJson {
  /** Whole numbers up to here are exact as doubles (2^53). */
  private static final double LARGEST_WHOLE = 9007199254740992.0;

  private static final JsonMapper MAPPER = JsonMapper.builder().addModule(new Jdk8Module()).build();

  private ResultJson() {}

  static ObjectNode of(Result result) {
    ObjectNode json = MAPPER.valueToTree(result);
    List<String> dropped = new ArrayList<>();
    json.fields()
        .forEachRemaining(
            field -> {
              if (!field.getKey().equals("plan")) {
                field.setValue(clean(field.getValue(), field.getKey(), dropped));
              }
            });
    json = withLimit(json);
    if (json.has("subgroups")) {
      ArrayNode groups = (ArrayNode) json.get("subgroups");
      for (int i = 0; i < groups.size(); i++) {
        groups.set(i, withLimit((ObjectNode) groups.get(i)));
      }
    }
    ArrayNode warnings = (ArrayNode) json.get("warnings");
    for (String place : dropped) {
      warnings.addPOJO(null);
      warnings.set(
          warnings.size() - 1,
          MAPPER.valueToTree(
              Result.Warning.of(
                  "number-out-of-range",
                  place + " is too large for a number and was left out; check the data's units")));
    }
    return json;
  }

  static ObjectNode of(List<Problem> problems) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.set("problems", MAPPER.valueToTree(problems));
    return json;
  }

  /** A limit without a summary, told at the place where the summary would show it. */
  private static ObjectNode withLimit(ObjectNode json) {
    ObjectNode told = JsonNodeFactory.instance.objectNode();
    json.fields()
        .forEachRemaining(
            field -> {
              if (field.getKey().equals("onlyLimit")) {
                told.putObject("summary").putObject("shown").set("limit", field.getValue());
              } else {
                told.set(field.getKey(), field.getValue());
              }
            });
    return told;
  }

  private static JsonNode clean(JsonNode node, String place, List<String> dropped) {
    if (node.isObject()) {
      ObjectNode kept = JsonNodeFactory.instance.objectNode();
      node.fields()
          .forEachRemaining(
              field -> {
                String inside = place + "." + field.getKey();
                if (finite(field.getValue())) {
                  kept.set(field.getKey(), clean(field.getValue(), inside, dropped));
                } else {
                  dropped.add(inside);
                }
              });
      return kept;
    }
    if (node.isArray()) {
      ArrayNode kept = JsonNodeFactory.instance.arrayNode();
      for (JsonNode one : node) {
        kept.add(clean(one, place + "[" + kept.size() + "]", dropped));
      }
      return kept;
    }
    return whole(node).map(n -> (JsonNode) JsonNodeFactory.instance.numberNode(n)).orElse(node);
  }

  private static boolean finite(JsonNode node) {
    return !node.isDouble() || Double.isFinite(node.doubleValue());
  }

  private static Optional<Long> whole(JsonNode node) {
    boolean is =
        node.isDouble()
            && node.doubleValue() == Math.rint(node.doubleValue())
            && Math.abs(node.doubleValue()) <= LARGEST_WHOLE;
    return is ? Optional.of((long) node.doubleValue()) : Optional.empty();
  }
}
