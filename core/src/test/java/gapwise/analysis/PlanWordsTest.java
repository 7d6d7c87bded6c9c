package gapwise.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import gapwise.analysis.plan.Task;
import gapwise.synthesis.heterogeneity.TauSquaredEstimator;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The schema of plans and the docs name the same tasks and estimators as the code lists, so that
 * whoever adds one and forgets a place is told which.
 */
class PlanWordsTest {
  private static final Path DOCS = Path.of("..", "docs");

  private final JsonNode schema = schema();

  private static JsonNode schema() {
    try (InputStream in = Task.class.getResourceAsStream("/gapwise/analysis/plan.schema.json")) {
      return new ObjectMapper().readTree(in);
    } catch (IOException unread) {
      throw new AssertionError(unread);
    }
  }

  @Test
  void theSchemaTakesTheEstimatorsThatAreListed() {
    assertEquals(
        estimators(),
        texts(schema.at("/$defs/synthesis/properties/betweenStudyVariance/enum")),
        "betweenStudyVariance in plan.schema.json");
  }

  @Test
  void theDocsTellOfEveryEstimator() throws IOException {
    String plan = line(DOCS.resolve("plan.md"), "| `betweenStudyVariance` |");
    String method = Files.readString(DOCS.resolve(Path.of("methods", "between-study-variance.md")));
    for (String name : estimators()) {
      assertTrue(plan.contains("`" + name + "`"), () -> "docs/plan.md has no " + name);
      assertTrue(
          method.contains("`" + name + "`"),
          () -> "docs/methods/between-study-variance.md has no " + name);
    }
  }

  @Test
  void everyTaskOfTheSchemaIsListedInTheCode() {
    List<String> words = texts(schema.at("/properties/task/enum"));
    assertEquals(words, words.stream().map(word -> Tasks.named(word).word()).toList());
    assertEquals(Tasks.all().stream().map(Task::word).toList(), words);
  }

  @Test
  void theFormOfEveryTaskIsItsOwn() {
    List<String> words = texts(schema.at("/properties/task/enum"));
    List<String> others = new ArrayList<>();
    List<String> ofSynthesis = new ArrayList<>(words);
    for (JsonNode rule : schema.get("allOf")) {
      String word = rule.at("/if/properties/task/const").asText();
      if (!word.isEmpty()) {
        assertEquals("#/$defs/" + word, rule.at("/then/$ref").asText());
        assertEquals(word, schema.at("/$defs/" + word + "/properties/task/const").asText());
        others.add(word);
      }
      ofSynthesis.removeAll(texts(rule.at("/if/properties/task/enum")));
    }
    assertEquals(
        List.of("synthesis", "multiverse"),
        ofSynthesis,
        "tasks in the form of a synthesis; the last rule of the schema must name every other");
    words.removeAll(ofSynthesis);
    assertEquals(words, others, "each task that has a form of its own has its rule, in this order");
  }

  @Test
  void theDocsTellOfEveryTask() throws IOException {
    String plan = Files.readString(DOCS.resolve("plan.md"));
    // The first is what a plan without a task asks, of which the page tells all along.
    for (Task task : Tasks.all().subList(1, Tasks.all().size())) {
      assertTrue(
          plan.contains("`\"task\": \"" + task.word() + "\"`"),
          () -> "docs/plan.md has no task " + task.word());
    }
  }

  private static List<String> estimators() {
    return TauSquaredEstimators.all().stream().map(TauSquaredEstimator::name).toList();
  }

  private static List<String> texts(JsonNode list) {
    List<String> texts = new ArrayList<>();
    list.forEach(one -> texts.add(one.asText()));
    return texts;
  }

  private static String line(Path page, String start) throws IOException {
    return Files.readAllLines(page).stream()
        .filter(one -> one.startsWith(start))
        .findFirst()
        .orElseThrow(() -> new AssertionError(page + " has no line " + start));
  }
}
