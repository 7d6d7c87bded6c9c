package gapwise.analysis.testing;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Published data with expected values, each bound to a plan and a place in its result. */
public final class PublishedChecks {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private PublishedChecks() {}

  /** A plan with the checks bound to it. */
  public record BoundPlan(Path folder, String name, JsonNode plan, List<Check> checks) {
    public String dataset() {
      return folder.getFileName().toString();
    }
  }

  /** One expected value: a number at a path, or nothing at a path and a code among warnings. */
  public record Check(String id, JsonNode binding, JsonNode expected) {}

  public static List<BoundPlan> all() {
    List<BoundPlan> plans = new ArrayList<>();
    for (Path folder : folders()) {
      JsonNode binding = read(folder.resolve("binding.json"));
      Map<String, JsonNode> expected = new LinkedHashMap<>();
      read(folder.resolve("expected.json"))
          .get("expected")
          .forEach(value -> expected.put(value.get("id").asText(), value));
      Map<String, List<Check>> byPlan = new LinkedHashMap<>();
      binding
          .get("checks")
          .fields()
          .forEachRemaining(
              check ->
                  byPlan
                      .computeIfAbsent(
                          check.getValue().get("plan").asText(), k -> new ArrayList<>())
                      .add(
                          new Check(
                              check.getKey(), check.getValue(), expected.get(check.getKey()))));
      binding
          .get("plans")
          .fields()
          .forEachRemaining(
              plan ->
                  plans.add(
                      new BoundPlan(
                          folder,
                          plan.getKey(),
                          plan.getValue(),
                          byPlan.getOrDefault(plan.getKey(), List.of()))));
    }
    return plans;
  }

  private static List<Path> folders() {
    try (Stream<Path> found =
        Files.list(Path.of(PublishedChecks.class.getResource("/published").toURI()))) {
      return found.filter(f -> Files.exists(f.resolve("binding.json"))).sorted().toList();
    } catch (IOException | URISyntaxException e) {
      throw new IllegalStateException("test resources cannot be listed", e);
    }
  }

  public static JsonNode read(Path file) {
    try {
      return MAPPER.readTree(Files.readString(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * The place a path names: dots for fields, {@code [n]} the n-th from zero, {@code [field=value]}
   * the one entry with that value.
   */
  public static JsonNode at(JsonNode result, String path) {
    JsonNode node = result;
    String rest = path;
    while (!rest.isEmpty() && !node.isMissingNode()) {
      if (rest.startsWith("[")) {
        int end = rest.indexOf(']');
        node = entry(node, rest.substring(1, end));
        rest = rest.substring(end + 1);
      } else {
        String name = rest.split("[.\\[]", 2)[0];
        node = node.path(name);
        rest = rest.substring(name.length());
      }
      rest = rest.startsWith(".") ? rest.substring(1) : rest;
    }
    return node;
  }

  private static JsonNode entry(JsonNode list, String which) {
    if (!which.contains("=")) {
      return list.path(Integer.parseInt(which));
    }
    for (JsonNode one : list) {
      boolean all = true;
      for (String part : which.split(",")) {
        String[] wanted = part.split("=", 2);
        all &= one.path(wanted[0]).asText().equals(wanted[1]);
      }
      if (all) {
        return one;
      }
    }
    return list.path("no such entry");
  }
}
