package gapwise.supplement;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** What the descriptor of a supplement says, by version 1 of the Data Package standard. */
final class SupplementForm {
  /** What the descriptor says of the program's own stands under this name. */
  static final String OWN = "gapwise";

  /** What such a package holds. */
  static final String HOLDS = "supplement";

  /** Counts up when files change so that older programs would misread them. */
  static final int FORM = 1;

  static final String JSON_TYPE = "application/json";
  static final String TEXT_TYPE = "text/plain";
  static final String CSV_TYPE = "text/csv";

  private static final JsonMapper JSON = JsonMapper.builder().build();

  private SupplementForm() {}

  static ObjectNode object() {
    return JSON.createObjectNode();
  }

  /**
   * A file.
   *
   * @param path where it lies; its name in the descriptor follows from it
   * @param type its media type
   */
  static ObjectNode file(String path, String type, String description) {
    return object()
        .put("profile", "data-resource")
        .put("name", path.toLowerCase(java.util.Locale.ROOT).replace('/', '-'))
        .put("path", path)
        .put("mediatype", type)
        .put("description", description);
  }
}
