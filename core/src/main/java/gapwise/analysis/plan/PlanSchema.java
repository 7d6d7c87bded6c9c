package gapwise.analysis.plan;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SchemaRegistryConfig;
import com.networknt.schema.SpecificationVersion;
import com.networknt.schema.path.PathType;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The form of a plan, checked against plan.schema.json; every fault in one go, in our words. */
public final class PlanSchema {
  private static final List<String> SOURCES = List.of("table", "rows", "evidence");
  private static final List<String> WITH_ROWS = List.of("source", "summaries", "numbersAtRisk");
  private static final Schema SCHEMA = load();

  private PlanSchema() {}

  private static Schema load() {
    try (InputStream in =
        PlanSchema.class.getResourceAsStream("/gapwise/analysis/plan.schema.json")) {
      SchemaRegistryConfig config =
          SchemaRegistryConfig.builder().pathType(PathType.LEGACY).locale(Locale.ENGLISH).build();
      return SchemaRegistry.withDefaultDialect(
              SpecificationVersion.DRAFT_2020_12, builder -> builder.schemaRegistryConfig(config))
          .getSchema(in);
    } catch (IOException e) {
      throw new UncheckedIOException("plan.schema.json cannot be read", e);
    }
  }

  /** What is wrong with the form of a plan; empty if nothing is. */
  public static List<Problem> check(JsonNode plan) {
    if (!plan.isObject()) {
      return List.of(
          new Problem("", "not-an-object", "found no JSON object, expected a plan in braces"));
    }
    Map<String, Problem> found = new LinkedHashMap<>();
    for (Error error : SCHEMA.validate(withoutRows((ObjectNode) plan))) {
      for (Problem problem : problems(error, plan)) {
        found.putIfAbsent(problem.where(), problem);
      }
    }
    Problems told = new Problems();
    found.values().forEach(told::add);
    WITH_ROWS.forEach(field -> rows(plan.path(field).path("rows"), field, told));
    return told.list();
  }

  /**
   * The plan with one row instead of each list of rows: all that the schema says of rows is that
   * they are objects, which {@link #rows} sees for a hundred thousand of them at no cost.
   */
  private static ObjectNode withoutRows(ObjectNode plan) {
    ObjectNode small = JsonNodeFactory.instance.objectNode();
    small.setAll(plan);
    for (String field : WITH_ROWS) {
      if (plan.path(field).path("rows").isArray() && !plan.at("/" + field + "/rows").isEmpty()) {
        ObjectNode source = JsonNodeFactory.instance.objectNode();
        source.setAll((ObjectNode) plan.get(field));
        source.putArray("rows").addObject();
        small.set(field, source);
      }
    }
    return small;
  }

  private static void rows(JsonNode rows, String field, Problems told) {
    for (int i = 0; i < rows.size(); i++) {
      if (!rows.get(i).isObject()) {
        String type = rows.get(i).getNodeType().name().toLowerCase(Locale.ROOT);
        told.add(
            field + ".rows[" + i + "]",
            "wrong-type",
            "found " + type + ", expected an object with a value for each column");
      }
    }
  }

  private static List<Problem> problems(Error error, JsonNode plan) {
    String path = error.getEvaluationPath().toString();
    String where = place(error.getInstanceLocation().toString());
    int branch = path.indexOf(".oneOf");
    if (branch >= 0) {
      return inSource(error, plan.path("source"), path.substring(branch), where);
    }
    if (path.contains(".anyOf")) {
      String whole = where.startsWith("prior.") ? firstTwo(where) : where.split("\\.")[0];
      return List.of(
          new Problem(
              whole,
              "wrong-value",
              "found a value of a form that this field does not take; docs/plan.md lists them"));
    }
    return List.of(worded(error, where));
  }

  private static List<Problem> inSource(Error error, JsonNode source, String branch, String where) {
    List<String> given = new ArrayList<>();
    source.fieldNames().forEachRemaining(given::add);
    if (given.size() != 1 || !SOURCES.contains(given.get(0))) {
      return List.of(
          new Problem(
              "source",
              "wrong-source",
              "expected exactly one of \"table\" (a file), \"rows\" (a list) and \"evidence\" (a"
                  + " selection)"));
    }
    boolean meant = branch.startsWith(".oneOf[" + SOURCES.indexOf(given.get(0)) + "]");
    return meant ? List.of(worded(error, where)) : List.of();
  }

  private static Problem worded(Error error, String where) {
    String property = error.getProperty();
    String inside = where.isEmpty() || property == null ? property : where + "." + property;
    Object[] told = error.getArguments();
    return switch (error.getKeyword()) {
      case "additionalProperties" ->
          new Problem(
              inside,
              "unknown-field",
              "a plan of this task has no such field; correct its name or remove it");
      case "propertyNames" ->
          new Problem(inside, "unknown-role", "columns has no such role; docs/plan.md lists them");
      case "required" ->
          new Problem(
              inside, "missing-field", "this field is needed with what the plan asks; add it");
      case "enum" ->
          new Problem(
              where,
              "unknown-value",
              "found " + error.getInstanceNode() + ", expected one of " + told[0]);
      case "const" ->
          new Problem(
              where,
              "wrong-value",
              "found "
                  + error.getInstanceNode()
                  + ", expected \""
                  + told[0]
                  + "\" with what else the plan asks");
      case "type" -> new Problem(where, "wrong-type", "found " + told[0] + ", expected " + told[1]);
      default ->
          new Problem(
              where,
              "out-of-range",
              "found " + error.getInstanceNode() + "; the value " + error.getMessage());
    };
  }

  private static String place(String location) {
    return location.equals("$") ? "" : location.replaceFirst("^\\$\\.?", "");
  }

  private static String firstTwo(String where) {
    String[] parts = where.split("\\.");
    return parts[0] + "." + parts[1];
  }
}
