package gapwise.analysis.rows;

import com.fasterxml.jackson.databind.JsonNode;

/** Where rows of a plan come from. */
public sealed interface Source {
  /** A file beside the plan. */
  record Table(String name) implements Source {}

  /** Rows in the plan itself; they can be many and are shared: not to be changed. */
  record Rows(JsonNode rows) implements Source {}

  /** A selection from the curated store. */
  record Evidence(JsonNode selection) implements Source {}

  /** Reads it from a field of a checked plan. */
  static Source of(JsonNode field) {
    if (field.has("table")) {
      return new Table(field.get("table").asText());
    }
    return field.has("rows") ? new Rows(field.get("rows")) : new Evidence(field.get("evidence"));
  }
}
