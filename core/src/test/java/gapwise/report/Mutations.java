package gapwise.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Plans that differ from a plan in one setting, made from the schema alone. */
final class Mutations {
  /** Fields that hold data, or name columns of it, or are never said. */
  private static final Set<String> NO_SETTINGS =
      Set.of("task", "title", "source", "columns", "summaries", "numbersAtRisk");

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final JsonNode SCHEMA = schema();

  private Mutations() {}

  private static JsonNode schema() {
    try (InputStream in =
        Mutations.class.getResourceAsStream("/gapwise/analysis/plan.schema.json")) {
      return new ObjectMapper().readTree(in);
    } catch (IOException unread) {
      throw new AssertionError(unread);
    }
  }

  /** The words of all tasks. */
  static Set<String> tasks() {
    Set<String> tasks = new TreeSet<>();
    SCHEMA.at("/properties/task/enum").forEach(word -> tasks.add(word.asText()));
    return tasks;
  }

  /** The form of a task. */
  private static JsonNode form(String task) {
    JsonNode own = SCHEMA.at("/$defs/" + task);
    return own.isMissingNode() || task.equals("multiverse") ? SCHEMA.at("/$defs/synthesis") : own;
  }

  /**
   * Plans in which one setting is another, by the place and value of that setting.
   *
   * @param given the plan as it came
   * @param full the same with its defaults
   * @param columns of its rows, of which settings may name others
   */
  static Map<String, ObjectNode> of(ObjectNode given, ObjectNode full, Set<String> columns) {
    Map<String, ObjectNode> mutants = new LinkedHashMap<>();
    form(full.path("task").asText())
        .get("properties")
        .fields()
        .forEachRemaining(
            field -> {
              String name = field.getKey();
              if (NO_SETTINGS.contains(name)) {
                return;
              }
              for (JsonNode value : others(field.getValue(), full.path(name), name, columns)) {
                if (!value.equals(full.path(name))) {
                  ObjectNode mutant = given.deepCopy();
                  mutant.set(name, value);
                  mutants.put(name + " = " + value, mutant);
                }
              }
            });
    return mutants;
  }

  /** Values that the schema takes in place of one, which may be missing. */
  private static List<JsonNode> others(
      JsonNode schema, JsonNode now, String name, Set<String> columns) {
    if (schema.has("$ref")) {
      return others(SCHEMA.at(schema.get("$ref").asText().substring(1)), now, name, columns);
    }
    List<JsonNode> others = new ArrayList<>();
    for (String choice : List.of("anyOf", "oneOf")) {
      for (JsonNode one : schema.path(choice)) {
        others.addAll(others(one, fits(one, now) ? now : NODES.missingNode(), name, columns));
      }
    }
    schema.path("enum").forEach(others::add);
    if (schema.has("const")) {
      others.add(schema.get("const"));
    }
    switch (schema.path("type").asText()) {
      case "boolean" -> others.add(NODES.booleanNode(!now.asBoolean()));
      case "number", "integer" -> numbers(schema, now, others);
      case "string" -> columns.forEach(column -> others.add(NODES.textNode(column)));
      case "array" -> lists(schema, now, name, columns, others);
      case "object" -> objects(schema, now, name, columns, others);
      default -> {
        // A choice, or any value.
      }
    }
    return others;
  }

  private static boolean fits(JsonNode schema, JsonNode now) {
    return switch (schema.path("type").asText()) {
      case "object" ->
          now.isObject()
              && !schema.path("properties").isMissingNode()
              && now.properties().stream()
                  .allMatch(one -> schema.get("properties").has(one.getKey()));
      case "array" -> now.isArray();
      case "number", "integer" -> now.isNumber();
      default -> now.isTextual();
    };
  }

  private static void numbers(JsonNode schema, JsonNode now, List<JsonNode> others) {
    boolean whole = schema.path("type").asText().equals("integer");
    double least = schema.path("minimum").asDouble(schema.path("exclusiveMinimum").asDouble(-1e9));
    double most = schema.path("maximum").asDouble(schema.path("exclusiveMaximum").asDouble(1e9));
    double from = now.isNumber() ? now.asDouble() : schema.path("default").asDouble(0.5);
    for (double value : new double[] {from - 0.2, from + 0.2, from + 7}) {
      if (value > least && value < most) {
        others.add(whole ? NODES.numberNode(Math.round(value)) : NODES.numberNode(rounded(value)));
      }
    }
  }

  private static double rounded(double value) {
    return Math.round(value * 1000) / 1000.0;
  }

  private static void lists(
      JsonNode schema, JsonNode now, String name, Set<String> columns, List<JsonNode> others) {
    if (now.size() > 1) {
      for (int i = 0; i < now.size(); i++) {
        ArrayNode fewer = now.deepCopy();
        fewer.remove(i);
        others.add(fewer);
      }
    }
    for (int i = 0; i < now.size(); i++) {
      for (JsonNode value : others(schema.path("items"), now.get(i), name, columns)) {
        ArrayNode changed = now.deepCopy();
        changed.set(i, value);
        others.add(changed);
      }
    }
    for (JsonNode value : others(schema.path("items"), NODES.missingNode(), name, columns)) {
      ArrayNode more = now.isArray() ? now.deepCopy() : NODES.arrayNode();
      others.add(more.add(value));
      others.add(NODES.arrayNode().add(value));
    }
  }

  /** Takes an object in which nothing required is missing. */
  private static void whole(JsonNode object, Set<String> required, List<JsonNode> others) {
    if (required.stream().allMatch(object::has)) {
      others.add(object);
    }
  }

  private static void objects(
      JsonNode schema, JsonNode now, String name, Set<String> columns, List<JsonNode> others) {
    ObjectNode start = now.isObject() ? now.deepCopy() : NODES.objectNode();
    Set<String> required = new LinkedHashSet<>();
    schema.path("required").forEach(one -> required.add(one.asText()));
    if (schema.path("minProperties").asInt() == 0) {
      whole(start, required, others);
    }
    schema
        .path("properties")
        .fields()
        .forEachRemaining(
            field -> {
              for (JsonNode value :
                  others(field.getValue(), start.path(field.getKey()), name, columns)) {
                whole(start.deepCopy().set(field.getKey(), value), required, others);
                if (schema.path("maxProperties").asInt() == 1) {
                  others.add(NODES.objectNode().set(field.getKey(), value));
                }
              }
              if (start.has(field.getKey())) {
                ObjectNode without = start.deepCopy();
                without.remove(field.getKey());
                whole(without, required, others);
              }
            });
    JsonNode any = schema.path("additionalProperties");
    if (any.isObject()) {
      start
          .fields()
          .forEachRemaining(
              field -> {
                for (JsonNode value : others(any, field.getValue(), name, columns)) {
                  others.add(start.deepCopy().set(field.getKey(), value));
                }
              });
    }
  }
}
