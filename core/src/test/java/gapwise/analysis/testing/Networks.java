package gapwise.analysis.testing;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** Short ways for tests to write the rows of a network and to find effects in its result. */
public final class Networks {
  private Networks() {}

  /** Adds an arm, with further cells as role and value in turn. */
  public static void arm(ArrayNode rows, String study, String treatment, Object... cells) {
    ObjectNode row = rows.addObject();
    row.put("study", study).put("treatment", treatment);
    for (int i = 0; i < cells.length; i += 2) {
      row.put((String) cells[i], ((Number) cells[i + 1]).doubleValue());
    }
  }

  /** Adds a contrast, the first treatment less the second. */
  public static void contrast(
      ArrayNode rows, String study, String first, String second, double effect, double error) {
    ObjectNode row = rows.addObject();
    row.put("study", study).put("treatment", first).put("against", second);
    row.put("effect", effect).put("standardError", error);
  }

  /** A network plan on contrasts, with further fields as name and value in turn. */
  public static ObjectNode contrasts(ArrayNode rows, String... fields) {
    ObjectNode plan = Plans.on(rows, fields);
    return plan.put("measure", "reported-effect").put("model", "network");
  }

  /** A network plan on arms, with further fields as name and value in turn. */
  public static ObjectNode arms(ArrayNode rows, String measure, String... fields) {
    return Plans.on(rows, fields).put("measure", measure).put("model", "network");
  }

  /** The effect of a pair in a result. */
  public static JsonNode effect(JsonNode result, String first, String second) {
    return PublishedChecks.at(
        result, "network.effects[treatment=" + first + ",against=" + second + "]");
  }

  /**
   * Eight invented studies of four treatments, two of three arms, that differ more than by chance.
   */
  public static ArrayNode eightStudies() {
    ArrayNode rows = Plans.rows();
    counts(rows, "A", "frame", 6, 40, "nail", 24, 42, "plate", 9, 38);
    counts(rows, "B", "frame", 7, 25, "nail", 11, 24);
    counts(rows, "C", "nail", 12, 51, "plate", 23, 49);
    counts(rows, "D", "plate", 6, 30, "graft", 12, 31, "frame", 10, 29);
    counts(rows, "E", "graft", 15, 35, "nail", 14, 33);
    counts(rows, "F", "frame", 5, 20, "nail", 4, 22);
    counts(rows, "G", "frame", 15, 30, "graft", 9, 28);
    counts(rows, "H", "nail", 18, 44, "plate", 9, 40);
    return rows;
  }

  /** Adds the arms of a study: treatment, events and total of each in turn. */
  public static void counts(ArrayNode rows, String study, Object... arms) {
    for (int i = 0; i < arms.length; i += 3) {
      arm(rows, study, (String) arms[i], "events", arms[i + 1], "total", arms[i + 2]);
    }
  }
}
