package gapwise.whole;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.exchange.DataPackage;
import java.util.List;

/** What the descriptor of a whole base says, by version 1 of the standard. */
final class WholeForm {
  /** What the descriptor says of the program's own stands under this name. */
  static final String OWN = "gapwise";

  /** What such a package holds. */
  static final String HOLDS = "evidence-base";

  /** Counts up when files or lines change so that older programs would misread them. */
  static final int FORM = 1;

  static final String CSV = ".csv";

  private static final JsonMapper JSON = JsonMapper.builder().build();

  private WholeForm() {}

  static ObjectNode head(ObjectNode root) {
    root.put("profile", "data-package");
    root.put("name", "gapwise-evidence-base");
    root.put("title", "Evidence base on bone lost to trauma of the lower limb");
    root.put(
        "description",
        "The studies as they stand, one CSV file a sheet of the extraction template, what stands"
            + " beside them, and in "
            + HistoryLines.FILE
            + " every version of every document with who wrote it, when and why. Imported into an"
            + " empty folder it gives the same evidence base with the same history. Drafts, settings"
            + " of columns and papers as files are no part of it.");
    return root;
  }

  static ObjectNode history() {
    ObjectNode resource = resource("history", HistoryLines.FILE);
    resource.put("format", "jsonl").put("mediatype", "application/jsonl");
    return resource.put(
        "description",
        "Every version of every document in the order of the change log, one JSON object a line:"
            + " change, kind, key, version, when, who, why, and unless the version deletes the"
            + " document its content as text with the SHA-256 of it.");
  }

  static ObjectNode beside() {
    ObjectNode resource = resource("beside-studies", DataPackage.BESIDE);
    resource.put("format", "jsonl").put("mediatype", "application/jsonl");
    return resource.put(
        "description",
        "Kept references, loads, searches, what persons settled, and what they chose while they"
            + " screened, as they stand, one JSON object a line.");
  }

  static ObjectNode searches() {
    return table(
            "searches",
            DataPackage.SEARCHES,
            List.of("database", "date", "words", "count_reported", "file", "limits", "who"))
        .put("description", "The log of searches, one row a search.");
  }

  static ObjectNode heads() {
    return table(
            "history-heads",
            DataPackage.HEADS,
            List.of("study_id", "version", "change", "written", "who", "why"))
        .put("description", "Which version of each study stands, who wrote it, when and why.");
  }

  private static ObjectNode table(String name, String path, List<String> columns) {
    ObjectNode resource = resource(name, path);
    resource.put("profile", "tabular-data-resource");
    resource.put("format", "csv").put("mediatype", "text/csv");
    ArrayNode fields = resource.putObject("schema").putArray("fields");
    columns.forEach(column -> fields.addObject().put("name", column).put("type", type(column)));
    return resource;
  }

  private static String type(String column) {
    return switch (column) {
      case "date" -> "date";
      case "written" -> "datetime";
      case "count_reported", "version", "change" -> "integer";
      default -> "string";
    };
  }

  private static ObjectNode resource(String name, String path) {
    return JSON.createObjectNode()
        .put("profile", "data-resource")
        .put("name", name)
        .put("path", path)
        .put("encoding", "utf-8");
  }
}
