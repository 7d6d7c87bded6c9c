package gapwise.analysis.result;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import gapwise.budget.Work;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Results as JSON. Fields stand in the order of {@link Result} and its part; whole numbers are
 * written without a fraction, all others with all digits. Should a number be infinite or undefined
 * all the same, it is left out and a warning says so: JSON has no such numbers.
 */
public final class ResultJson {
  /** Whole numbers up to here are exact as doubles (2^53). */
  private static final double LARGEST_WHOLE = 9007199254740992.0;

  private static final JsonMapper MAPPER = JsonMapper.builder().addModule(new Jdk8Module()).build();

  private ResultJson() {}

  public static ObjectNode of(Result result) {
    return of(result, Optional.empty());
  }

  /** The same with what made it, after the plan. */
  public static ObjectNode of(Result result, Origin origin) {
    return of(result, Optional.of(origin));
  }

  private static ObjectNode of(Result result, Optional<Origin> origin) {
    // The plan is JSON already, with as many rows as there are data, and is not written anew.
    ObjectNode found = JsonNodeFactory.instance.objectNode();
    found.set("data", MAPPER.valueToTree(result.data()));
    ObjectNode part = MAPPER.valueToTree(result.part());
    result
        .part()
        .field()
        .ifPresentOrElse(field -> found.set(field, part), () -> found.setAll(part));
    found.set("warnings", MAPPER.valueToTree(result.warnings()));
    List<String> dropped = new ArrayList<>();
    clean(found, "", dropped);
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    ObjectNode plan = result.plan();
    json.set("plan", plan);
    origin.ifPresent(
        made -> {
          json.set("software", made.software());
          made.evidence(plan).ifPresent(state -> json.set("evidence", state));
        });
    json.setAll(withLimit(found));
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
                  say("analysis.number-out-of-range", Map.of("place", place)))));
    }
    return json;
  }

  public static ObjectNode of(List<Problem> problems) {
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

  /** Takes out what JSON cannot say and writes whole numbers as such, in place. */
  private static void clean(ObjectNode object, String place, List<String> dropped) {
    Work.check();
    for (Iterator<Map.Entry<String, JsonNode>> fields = object.fields(); fields.hasNext(); ) {
      Map.Entry<String, JsonNode> field = fields.next();
      JsonNode value = field.getValue();
      String inside = place + field.getKey();
      if (!finite(value)) {
        dropped.add(inside);
        fields.remove();
      } else if (value instanceof ObjectNode part) {
        clean(part, inside + ".", dropped);
      } else if (value instanceof ArrayNode list) {
        clean(list, inside, dropped);
      } else {
        whole(value).ifPresent(field::setValue);
      }
    }
  }

  private static void clean(ArrayNode list, String place, List<String> dropped) {
    for (int i = 0; i < list.size(); i++) {
      int at = i;
      JsonNode value = list.get(i);
      String inside = place + "[" + i + "]";
      if (!finite(value)) {
        dropped.add(inside);
        list.set(i, NullNode.getInstance());
      } else if (value instanceof ObjectNode part) {
        clean(part, inside + ".", dropped);
      } else if (value instanceof ArrayNode inner) {
        clean(inner, inside, dropped);
      } else {
        whole(value).ifPresent(number -> list.set(at, number));
      }
    }
  }

  private static boolean finite(JsonNode node) {
    return !node.isDouble() || Double.isFinite(node.doubleValue());
  }

  private static Optional<JsonNode> whole(JsonNode node) {
    boolean is =
        node.isDouble()
            && node.doubleValue() == Math.rint(node.doubleValue())
            && Math.abs(node.doubleValue()) <= LARGEST_WHOLE;
    return is
        ? Optional.of(JsonNodeFactory.instance.numberNode((long) node.doubleValue()))
        : Optional.empty();
  }
}
