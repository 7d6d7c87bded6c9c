package gapwise.exchange;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.exchange.form.CodeForm;
import java.util.List;

/**
 * The description of every column of the template for machines: a data package with table schemas,
 * by the open Data Package standard (datapackage.org, version 2.0).
 */
public final class DataPackage {
  private static final List<String> MISSING =
      List.of("", "-", "NR", "n/a", "not reported", "not applicable", "unclear", "?");

  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  private DataPackage() {}

  /** Name of the descriptor. */
  public static final String FILE = "datapackage.json";

  /** File of what stands beside the studies, one JSON object a line. */
  public static final String BESIDE = "beside-studies.jsonl";

  /** File of the versions of the studies as they were exported. */
  public static final String HEADS = "history-heads.csv";

  /** File of the log of searches. */
  public static final String SEARCHES = "searches.csv";

  private static final List<String> OF_A_SEARCH =
      List.of("database", "date", "words", "count_reported", "file", "limits", "who");

  private static final List<String> OF_A_HEAD =
      List.of("study_id", "version", "change", "written", "who", "why");

  /** The descriptor, datapackage.json, for CSV files beside it named after the sheets. */
  public static String json() {
    return written(described());
  }

  /** The same for an export, which has more files beside the sheets. */
  public static String ofExport() {
    ObjectNode root = described();
    ArrayNode resources = (ArrayNode) root.path("resources");
    ObjectNode beside = file(resources, "beside-studies", BESIDE);
    beside.put(
        "description",
        "Kept references with where they come from, the files that were loaded, the log of searches,"
            + " what persons settled of pairs and of shared patients, and what they chose while they"
            + " screened, one JSON object a line.");
    beside.put("format", "jsonl");
    beside.put("mediatype", "application/jsonl");
    ObjectNode searches = table(resources, "searches", SEARCHES, OF_A_SEARCH);
    searches.put("description", "The log of searches, one row a search.");
    ObjectNode heads = table(resources, "history-heads", HEADS, OF_A_HEAD);
    heads.put(
        "description",
        "Which version of each study this is, and who wrote it when and why, in the evidence base"
            + " that was exported.");
    return written(root);
  }

  /**
   * A sheet as a resource by version 1 of the standard (specs.frictionlessdata.io), whose form has
   * profiles where version 2 has schemas and types.
   */
  static ObjectNode version1(Sheet sheet, String path) {
    ObjectNode resource = MAPPER.createObjectNode();
    resource.put("profile", "tabular-data-resource").put("name", sheet.name()).put("path", path);
    ObjectNode described = resource(sheet);
    described.remove(List.of("$schema", "type", "name", "path"));
    return resource.setAll(described);
  }

  private static ObjectNode file(ArrayNode resources, String name, String path) {
    ObjectNode resource = resources.addObject();
    resource.put("$schema", "https://datapackage.org/profiles/2.0/dataresource.json");
    resource.put("name", name);
    resource.put("path", path);
    resource.put("encoding", "utf-8");
    return resource;
  }

  private static ObjectNode table(
      ArrayNode resources, String name, String path, List<String> columns) {
    ObjectNode resource = file(resources, name, path);
    resource.put("type", "table");
    resource.put("format", "csv");
    resource.put("mediatype", "text/csv");
    ArrayNode fields = resource.putObject("schema").putArray("fields");
    for (String column : columns) {
      fields.addObject().put("name", column).put("type", type(column));
    }
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

  private static ObjectNode described() {
    ObjectNode root = MAPPER.createObjectNode();
    root.put("$schema", "https://datapackage.org/profiles/2.0/datapackage.json");
    root.put("name", "gapwise-extraction-template");
    root.put("title", Readme.lines(List.of()).get(0));
    root.put("description", Readme.lines(List.of()).get(1));
    ArrayNode resources = root.putArray("resources");
    Export.sheets(List.of()).forEach(sheet -> resources.add(resource(sheet)));
    return root;
  }

  private static String written(ObjectNode root) {
    DefaultPrettyPrinter lines = new DefaultPrettyPrinter();
    lines.indentArraysWith(DefaultIndenter.SYSTEM_LINEFEED_INSTANCE.withLinefeed("\n"));
    lines.indentObjectsWith(DefaultIndenter.SYSTEM_LINEFEED_INSTANCE.withLinefeed("\n"));
    try {
      return MAPPER.writer(lines).writeValueAsString(root) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the descriptor cannot be written", e);
    }
  }

  private static ObjectNode resource(Sheet sheet) {
    ObjectNode resource = MAPPER.createObjectNode();
    resource.put("$schema", "https://datapackage.org/profiles/2.0/dataresource.json");
    resource.put("name", sheet.name());
    resource.put("type", "table");
    resource.put("path", sheet.name() + ".csv");
    resource.put("description", sheet.description());
    resource.put("format", "csv");
    resource.put("mediatype", "text/csv");
    resource.put("encoding", "utf-8");
    resource.putObject("dialect").put("delimiter", ",").put("commentChar", "#");
    ObjectNode schema = resource.putObject("schema");
    ArrayNode fields = schema.putArray("fields");
    sheet.fields().forEach(field -> fields.add(field(field)));
    MISSING.forEach(schema.putArray("missingValues")::add);
    keys(sheet, schema);
    return resource;
  }

  private static void keys(Sheet sheet, ObjectNode schema) {
    switch (sheet.name()) {
      case "studies" -> schema.putArray("primaryKey").add(Keys.STUDY.name());
      case "arms" -> schema.putArray("primaryKey").add(Keys.STUDY.name()).add(Keys.ARM.name());
      case "patients" ->
          schema.putArray("primaryKey").add(Keys.STUDY.name()).add(PatientSheet.PATIENT.name());
      default -> {
        // Outcomes have no key: a paper may report one number twice. Nor has an appraisal, of which
        // outcome and comparison may be blank, nor a curve, which may pass one time twice.
      }
    }
    if (!sheet.equals(StudySheet.SHEET)) {
      ObjectNode key = schema.putArray("foreignKeys").addObject();
      key.putArray("fields").add(Keys.STUDY.name());
      ObjectNode reference = key.putObject("reference");
      reference.put("resource", StudySheet.SHEET.name());
      reference.putArray("fields").add(Keys.STUDY.name());
    }
  }

  private static ObjectNode field(Field<?> field) {
    ObjectNode node = MAPPER.createObjectNode();
    node.put("name", field.name());
    node.put("title", field.title());
    node.put("description", field.description());
    node.put("type", field.form().type().schemaName());
    if (!field.unit().isEmpty()) {
      node.put("unit", field.unit());
    }
    if (!field.example().isEmpty()) {
      node.put("example", field.example());
    }
    List<String> allowed = field.form().allowed();
    boolean closed = field.form() instanceof CodeForm && !allowed.isEmpty();
    if (field.required() || closed) {
      ObjectNode constraints = node.putObject("constraints");
      if (field.required()) {
        constraints.put("required", true);
      }
      if (closed) {
        allowed.forEach(constraints.putArray("enum")::add);
      }
    }
    if (!closed && !allowed.isEmpty()) {
      // Several words in one cell, or words beside those of the list, so no constraint.
      allowed.forEach(node.putArray("suggested")::add);
    }
    if (allowed.contains("unclear")) {
      // Here the word is an answer and not a reason for having none.
      MISSING.stream()
          .filter(word -> !word.equals("unclear"))
          .forEach(node.putArray("missingValues")::add);
    }
    return node;
  }
}
