package gapwise.supplement;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;

/**
 * An analysis as the descriptor of a supplement names it.
 *
 * @param name unique among them, such as 01-union
 * @param title for people
 * @param asking how its rows are asked for
 * @param tables files beside its plan that it reads
 */
record WrittenAnalysis(String name, String title, Asking asking, List<String> tables) {
  private static final Pattern NAME = Pattern.compile("[a-z0-9-]{1,80}");
  private static final Pattern TABLE = Pattern.compile("[A-Za-z0-9_][A-Za-z0-9._-]{0,99}");

  WrittenAnalysis {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(asking, "asking");
    tables = List.copyOf(tables);
    if (!NAME.matcher(name).matches() || !tables.stream().allMatch(WrittenAnalysis::isTable)) {
      throw new IllegalArgumentException("no analysis of a supplement: " + name + ", " + tables);
    }
  }

  /** Whether a table of a plan can lie beside the plan under its own name. */
  static boolean isTable(String name) {
    return TABLE.matcher(name).matches();
  }

  /** Where the plan lies. */
  String plan() {
    return "plans/" + name + ".json";
  }

  /** Where a table of the plan lies. */
  String table(String table) {
    return "plans/" + name + "/" + table;
  }

  /** Where the result lies. */
  String result() {
    return "results/" + name + ".json";
  }

  /** Where the methods lie. */
  String methods() {
    return "methods/" + name + ".txt";
  }

  ObjectNode json() {
    ObjectNode node = SupplementForm.object();
    node.put("name", name).put("title", title).put("asking", asking.code());
    node.put("plan", plan()).put("result", result());
    tables.forEach(node.putArray("tables")::add);
    return node;
  }

  /**
   * Reads what {@link #json} wrote.
   *
   * @throws WrongInputException where it is none
   */
  static WrittenAnalysis of(JsonNode node) {
    try {
      List<String> tables = new java.util.ArrayList<>();
      node.path("tables").forEach(one -> tables.add(one.asText()));
      return new WrittenAnalysis(
          node.path("name").asText(),
          node.path("title").asText(),
          Asking.of(node.path("asking").asText())
              .orElseThrow(() -> new IllegalArgumentException("an unknown way to ask")),
          tables);
    } catch (IllegalArgumentException wrong) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  "datapackage.json",
                  "no-analysis",
                  "It names an analysis that this program cannot read: "
                      + node
                      + ". Run the supplement with the version that wrote it, or get it again.")));
    }
  }
}
