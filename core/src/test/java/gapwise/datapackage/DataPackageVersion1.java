package gapwise.datapackage;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What version 1 of the Frictionless standards asks of a descriptor, written down from their pages:
 * specs.frictionlessdata.io/data-package, /data-resource, /tabular-data-resource and /table-schema.
 */
public final class DataPackageVersion1 {
  private static final Pattern NAME = Pattern.compile("^([-a-z0-9._/])+$");
  private static final Pattern HASH = Pattern.compile("^([^:]+:[a-fA-F0-9]+|[a-fA-F0-9]{32})$");
  private static final Pattern MEDIA_TYPE = Pattern.compile("^(.+)/(.+)$");

  /** A relative path may lead nowhere above the descriptor. */
  private static final Pattern PATH = Pattern.compile("^(?=^[^./~])(^((?!\\.{2}).)*$).*$");

  /** Constraints by the types of fields that may have them. */
  private static final Map<String, Set<String>> CONSTRAINTS =
      Map.of(
          "string", Set.of("required", "unique", "pattern", "enum", "minLength", "maxLength"),
          "number", Set.of("required", "unique", "pattern", "enum", "minimum", "maximum"),
          "integer", Set.of("required", "unique", "pattern", "enum", "minimum", "maximum"),
          "date", Set.of("required", "unique", "enum", "minimum", "maximum"),
          "datetime", Set.of("required", "unique", "enum", "minimum", "maximum"),
          "boolean", Set.of("required", "enum"));

  private DataPackageVersion1() {}

  /** Fails at the first thing that the standard does not allow. */
  public static void assertValid(JsonNode root) {
    assertTrue(root.path("profile").asText("data-package").equals("data-package"), "profile");
    assertTrue(NAME.matcher(root.path("name").asText("x")).matches(), "name");
    JsonNode resources = root.path("resources");
    assertTrue(resources.isArray() && !resources.isEmpty(), "resources: one or more");
    Set<String> names = new HashSet<>();
    for (JsonNode resource : resources) {
      String name = resource.path("name").asText();
      assertTrue(names.add(name), "a name that another has: " + name);
      assertResource(resource, name);
    }
    for (JsonNode resource : resources) {
      for (JsonNode key : resource.path("schema").path("foreignKeys")) {
        String other = key.path("reference").path("resource").asText();
        assertTrue(other.isEmpty() || names.contains(other), "no resource " + other);
      }
    }
  }

  private static void assertResource(JsonNode resource, String name) {
    assertTrue(NAME.matcher(name).matches(), "name: " + name);
    assertTrue(PATH.matcher(resource.path("path").asText()).matches(), name + ": path");
    assertTrue(resource.path("bytes").canConvertToLong(), name + ": bytes");
    assertTrue(HASH.matcher(resource.path("hash").asText()).matches(), name + ": hash");
    assertTrue(
        MEDIA_TYPE.matcher(resource.path("mediatype").asText("a/b")).matches(), name + ": type");
    String profile = resource.path("profile").asText("data-resource");
    assertTrue(
        Set.of("data-resource", "tabular-data-resource").contains(profile), name + ": profile");
    if (profile.equals("tabular-data-resource")) {
      assertSchema(resource.path("schema"), name);
    }
  }

  private static void assertSchema(JsonNode schema, String of) {
    assertTrue(schema.path("fields").isArray() && !schema.path("fields").isEmpty(), of);
    Set<String> fields = new HashSet<>();
    for (JsonNode field : schema.path("fields")) {
      String name = field.path("name").asText();
      assertTrue(!name.isBlank() && fields.add(name), of + ": field " + name);
      Set<String> allowed = CONSTRAINTS.get(field.path("type").asText("string"));
      assertTrue(allowed != null, of + ": type of " + name);
      field
          .path("constraints")
          .fieldNames()
          .forEachRemaining(
              each -> assertTrue(allowed.contains(each), of + ", " + name + ": " + each));
    }
    for (JsonNode key : schema.path("primaryKey")) {
      assertTrue(fields.contains(key.asText()), of + ": key " + key);
    }
    for (JsonNode key : schema.path("foreignKeys")) {
      assertTrue(
          key.path("fields").size() == key.path("reference").path("fields").size(), of + ": key");
      key.path("fields").forEach(each -> assertTrue(fields.contains(each.asText()), of));
    }
    schema.path("missingValues").forEach(each -> assertTrue(each.isTextual(), of + ": missing"));
  }
}
