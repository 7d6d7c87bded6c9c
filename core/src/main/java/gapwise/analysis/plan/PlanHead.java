package gapwise.analysis.plan;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.rows.Columns;
import gapwise.analysis.rows.Sources;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What every plan has.
 *
 * @param json with every default filled in, to be told in the result; shared, since rows are many:
 *     not to be changed, and not to be read for settings
 * @param measure its word, or the task's where it has none
 * @param columns role to column
 * @param level of intervals, above 0 and below 1
 * @param sources of its rows
 */
public record PlanHead(
    ObjectNode json, String measure, Map<String, String> columns, double level, Sources sources) {
  public PlanHead {
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
  }

  /** Reads it from a plan whose defaults are filled in. */
  public static PlanHead of(ObjectNode full) {
    return new PlanHead(
        full,
        full.path("measure").asText(full.get("task").asText()),
        columns(full),
        full.get("level").asDouble(),
        Sources.of(full));
  }

  /** The columns as {@link Columns} resolves them. */
  public Columns.Named named() {
    return new Columns.Named("columns", columns, measure);
  }

  /** Role to column, as the field {@code columns} of an object says. */
  public static Map<String, String> columns(JsonNode object) {
    Map<String, String> columns = new LinkedHashMap<>();
    object
        .path("columns")
        .fields()
        .forEachRemaining(field -> columns.put(field.getKey(), field.getValue().asText()));
    return columns;
  }

  /** The texts of a list; none if there is no list. */
  public static List<String> texts(JsonNode list) {
    List<String> texts = new ArrayList<>();
    list.forEach(text -> texts.add(text.asText()));
    return texts;
  }
}
