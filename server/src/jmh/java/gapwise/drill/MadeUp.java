package gapwise.drill;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Requests made from a seed: every address that the description of the API names and the pages
 * beside it, with values that are right, odd, far too large or hostile, and the published example
 * plans with some of their numbers and settings changed. The same seed and number give the same
 * request.
 */
final class MadeUp {
  private static final JsonMapper JSON = JsonMapper.builder().build();
  private static final List<String> PAGES =
      List.of(
          "/",
          "/studies",
          "/studies.csv",
          "/studies.xlsx",
          "/studies/invented-01",
          "/pooled",
          "/by-size",
          "/funnel",
          "/map",
          "/map.csv",
          "/claim",
          "/claim/ways",
          "/case",
          "/import",
          "/method",
          "/understood",
          "/import/none",
          "/import/template/arms.csv",
          "/nothing");
  private static final List<String> ODD =
      List.of(
          "",
          " ",
          "0",
          "-1",
          "7,5",
          "1e308",
          "1e-308",
          "-1e999",
          "NaN",
          "Infinity",
          "null",
          "½",
          "99999999999999999999",
          "2147483648",
          "\u0000",
          "\r\nX-Evil: 1",
          "\u202e",
          "日本語",
          "🦴",
          "\"'><xq9 onx=1>",
          "<script>xq9()</script>",
          "${7*7}",
          "' OR 1=1 --",
          "*",
          "a*",
          "\"",
          "AND",
          "title:bone",
          "[a TO b]",
          "((((",
          "\\",
          "../../../../etc/passwd",
          "2015",
          "tibia 5 to 8 cm",
          "over 6 cm since 2010",
          "gap of 1e308 cm",
          "8-5",
          "from from",
          "no no infection");
  private static final double[] NUMBERS = {
    0, -0.0, 1, -1, 2, 0.5, 1e308, -1e308, 1e-308, 4.9e-324, 1e16, 2147483648.0, 1e40, 1e-16, 1e6
  };

  /** One request; the body is empty for GET. */
  record Request(String method, String address, String body) {}

  private final long seed;
  private final List<String> paths = new ArrayList<>(PAGES);
  private final Map<String, List<String>> values = new TreeMap<>();
  private final List<ObjectNode> plans = new ArrayList<>();

  /**
   * @param description the OpenAPI document
   * @param vocabularies what the API answers under /vocabularies
   * @param published folder of the published examples
   */
  MadeUp(long seed, JsonNode description, JsonNode vocabularies, Path published)
      throws IOException {
    this.seed = seed;
    description
        .path("paths")
        .fields()
        .forEachRemaining(
            path -> {
              if (path.getValue().has("get")) {
                paths.add(path.getKey().replace("{id}", "invented-07"));
              }
              path.getValue().findValues("parameters").forEach(list -> parameters(list));
            });
    description.path("components").path("parameters").forEach(this::parameter);
    Map<String, String> words =
        Map.of(
            "method",
            "methods",
            "outcome",
            "outcomes",
            "bone",
            "bones",
            "design",
            "designs",
            "clock",
            "clocks",
            "infected",
            "infected",
            "a",
            "methods",
            "b",
            "methods");
    words.forEach(
        (name, list) ->
            vocabularies.path(list).forEach(word -> add(name, word.path("code").asText())));
    readPlans(published);
  }

  private void parameters(JsonNode list) {
    list.forEach(this::parameter);
  }

  private void parameter(JsonNode parameter) {
    if (parameter.path("in").asText().equals("query")) {
      String name = parameter.path("name").asText();
      values.computeIfAbsent(name, n -> new ArrayList<>());
      JsonNode schema = parameter.path("schema");
      JsonNode items = schema.has("items") ? schema.path("items") : schema;
      items.path("enum").forEach(value -> add(name, value.asText()));
    }
  }

  private void add(String name, String value) {
    values.computeIfAbsent(name, n -> new ArrayList<>()).add(value);
  }

  private void readPlans(Path published) throws IOException {
    try (Stream<Path> folders = Files.list(published)) {
      for (Path folder : new TreeSet<>(folders.toList())) {
        Path binding = folder.resolve("binding.json");
        if (Files.exists(binding)) {
          for (JsonNode plan : JSON.readTree(binding.toFile()).path("plans")) {
            plans.add(withRows((ObjectNode) plan, folder));
          }
        }
      }
    }
  }

  private static ObjectNode withRows(ObjectNode plan, Path folder) throws IOException {
    for (String part : List.of("source", "summaries", "numbersAtRisk")) {
      if (plan.path(part).has("table")) {
        ObjectNode source = (ObjectNode) plan.get(part);
        Path table = folder.resolve(source.remove("table").asText());
        source.set("rows", rows(Files.readAllLines(table)));
      }
    }
    return plan;
  }

  private static ArrayNode rows(List<String> lines) {
    ArrayNode rows = JSON.createArrayNode();
    String[] names = lines.get(0).split(",", -1);
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",", -1);
      ObjectNode row = rows.addObject();
      for (int i = 0; i < Math.min(names.length, cells.length); i++) {
        if (cells[i].matches("-?\\d+(\\.\\d+)?([eE]-?\\d+)?")) {
          row.put(names[i], Double.parseDouble(cells[i]));
        } else if (!cells[i].isEmpty()) {
          row.put(names[i], cells[i].replace("\"", ""));
        }
      }
    }
    return rows;
  }

  Request request(int number) {
    SplittableRandom random = new SplittableRandom(seed * 1_000_003L + number);
    double kind = random.nextDouble();
    if (kind < 0.6) {
      return new Request("GET", address(random), "");
    }
    if (kind < 0.9) {
      String path =
          random.nextInt(3) > 0
              ? "/api/v1/syntheses"
              : "/api/v1/figure." + List.of("svg", "csv", "png").get(random.nextInt(3));
      return new Request("POST", path, plan(random));
    }
    return new Request("POST", "/api/v1/syntheses", text(random));
  }

  private String address(SplittableRandom random) {
    List<String> names = List.copyOf(values.keySet());
    StringBuilder address = new StringBuilder(paths.get(random.nextInt(paths.size())));
    int parameters = new int[] {0, 1, 1, 2, 3, 4, 6}[random.nextInt(7)];
    for (int i = 0; i < parameters; i++) {
      String name = random.nextInt(12) == 0 ? "q" : names.get(random.nextInt(names.size()));
      add(address, name, value(random, name));
    }
    if (random.nextBoolean()) {
      add(address, "outcome", right(random, "outcome"));
    }
    return address.toString();
  }

  private static void add(StringBuilder address, String name, String value) {
    address
        .append(address.indexOf("?") < 0 ? '?' : '&')
        .append(URLEncoder.encode(name, StandardCharsets.UTF_8))
        .append('=')
        .append(URLEncoder.encode(value, StandardCharsets.UTF_8));
  }

  private String value(SplittableRandom random, String name) {
    double kind = random.nextDouble();
    if (kind < 0.55 && !values.getOrDefault(name, List.of()).isEmpty()) {
      return right(random, name);
    }
    if (kind < 0.65) {
      return String.valueOf(random.nextInt(-5, 60));
    }
    if (kind < 0.7) {
      return "aé5 🦴<%".repeat(random.nextInt(1, 200));
    }
    return ODD.get(random.nextInt(ODD.size()));
  }

  private String right(SplittableRandom random, String name) {
    List<String> known = values.get(name);
    return known.get(random.nextInt(known.size()));
  }

  private String plan(SplittableRandom random) {
    ObjectNode plan = plans.get(random.nextInt(plans.size())).deepCopy();
    int changes = random.nextInt(4);
    for (int i = 0; i < changes; i++) {
      change(random, plan);
    }
    return plan.toString();
  }

  private static void change(SplittableRandom random, ObjectNode plan) {
    JsonNode rows = plan.path("source").path("rows");
    if (rows.size() > 0 && random.nextInt(3) > 0) {
      ObjectNode row = (ObjectNode) rows.get(random.nextInt(rows.size()));
      List<String> names = new ArrayList<>();
      row.fieldNames().forEachRemaining(names::add);
      if (!names.isEmpty()) {
        odd(random, row, names.get(random.nextInt(names.size())));
      }
      return;
    }
    List<String> names = new ArrayList<>();
    plan.fieldNames().forEachRemaining(names::add);
    odd(random, plan, names.get(random.nextInt(names.size())));
  }

  private static void odd(SplittableRandom random, ObjectNode node, String name) {
    switch (random.nextInt(6)) {
      case 0 -> node.remove(name);
      case 1 -> node.put(name, ODD.get(random.nextInt(ODD.size())));
      case 2 -> node.putNull(name);
      case 3 -> node.putArray(name).add(NUMBERS[random.nextInt(NUMBERS.length)]);
      default -> node.put(name, NUMBERS[random.nextInt(NUMBERS.length)]);
    }
  }

  private String text(SplittableRandom random) {
    String plan = plans.get(random.nextInt(plans.size())).toString();
    return switch (random.nextInt(6)) {
      case 0 -> plan.substring(0, random.nextInt(plan.length()));
      case 1 -> "[".repeat(random.nextInt(1, 50_000));
      case 2 -> plan + plan;
      case 3 -> "null";
      case 4 -> plan.replaceFirst("\\d+", "9".repeat(400));
      default -> "";
    };
  }
}
