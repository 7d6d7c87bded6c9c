package gapwise.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.result.Origin;
import gapwise.analysis.result.ResultJson;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * What the paragraph says is what was run: every setting of every plan is changed to every other
 * value the schema has for it. Where the result is another, the paragraph must be; where a setting
 * had no bearing, it must not be. Plans are those of the pages of methods and those below.
 */
class WhatWasRunTest {
  static final Origin ORIGIN = new Origin("1.2.3", OptionalLong.empty(), Optional.empty());

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Pattern PLAN = Pattern.compile("```json plan\n(.*?)```", Pattern.DOTALL);

  private static final Set<String> SAID = ConcurrentHashMap.newKeySet();
  private static final Set<String> DONE = ConcurrentHashMap.newKeySet();

  /** Beginnings of what is said of rows of the evidence base and of tables alone. */
  private static final List<String> OF_EVIDENCE =
      List.of(
          "select.",
          "infected.",
          "unused.",
          "evidence.state",
          "data.groups",
          "data.table",
          "data.reports-unused",
          "left.median-",
          "converted.converted-from-",
          "converted.patients-");

  /** A plan as run: the result without what repeats the plan, and what is said of it. */
  private record Run(
      JsonNode result,
      List<List<String>> paragraphs,
      JsonNode full,
      Set<String> unused,
      Set<String> said) {}

  static Map<String, ObjectNode> plans() throws IOException {
    Map<String, ObjectNode> plans = new LinkedHashMap<>();
    try (Stream<Path> pages = Files.list(Path.of("..", "docs", "methods"))) {
      for (Path page : pages.filter(p -> p.toString().endsWith(".md")).sorted().toList()) {
        Matcher found = PLAN.matcher(Files.readString(page));
        for (int i = 1; found.find(); i++) {
          plans.put(page.getFileName() + " " + i, (ObjectNode) JSON.readTree(found.group(1)));
        }
      }
    }
    JsonNode own = JSON.readTree(WhatWasRunTest.class.getResourceAsStream("/report/plans.json"));
    own.fields().forEachRemaining(one -> plans.put(one.getKey(), (ObjectNode) one.getValue()));
    return plans;
  }

  private static Optional<Run> run(ObjectNode plan) {
    PlanOutcome outcome = Runner.withoutEvidence().run(plan, Optional.empty());
    if (!(outcome instanceof PlanOutcome.Done done)) {
      return Optional.empty();
    }
    ObjectNode json = ResultJson.of(done.result());
    JsonNode full = json.remove("plan");
    Set<String> unused = new LinkedHashSet<>();
    ArrayNode warnings = (ArrayNode) json.get("warnings");
    for (Iterator<JsonNode> each = warnings.iterator(); each.hasNext(); ) {
      JsonNode warning = each.next();
      String code = warning.get("code").asText();
      if (code.equals("setting-not-used")) {
        unused.add(warning.get("message").asText().replaceAll("^'([^']*)'.*", "$1"));
        each.remove();
      } else if (code.equals("too-few-studies")) {
        // It says why a part is not there, by the setting that asked for it; that is no result.
        each.remove();
      }
    }
    if (json.has("multiverse")) {
      withoutEcho(json);
    }
    Telling telling = MethodsParagraph.told(done.result(), ORIGIN);
    SAID.addAll(telling.said());
    return Optional.of(new Run(json, telling.paragraphs(), full, unused, telling.said()));
  }

  /**
   * A multiverse lists levels of choices that no analysis has, and warns of rows as the plan's own
   * analysis reads them, be it among the analyses or not: neither is a result of any of them.
   */
  private static void withoutEcho(ObjectNode json) {
    ((ArrayNode) json.get("warnings")).removeAll();
    for (JsonNode choice : json.at("/multiverse/choices")) {
      for (Iterator<JsonNode> levels = choice.get("levels").iterator(); levels.hasNext(); ) {
        if (levels.next().get("analyses").asInt() == 0) {
          levels.remove();
        }
      }
    }
    for (Iterator<JsonNode> each = json.at("/multiverse/choices").iterator(); each.hasNext(); ) {
      if (each.next().get("levels").isEmpty()) {
        each.remove();
      }
    }
  }

  /** What is wrong with what is said of the mutants of a plan. */
  static List<String> wrong(ObjectNode plan) {
    List<String> wrong = new ArrayList<>();
    Run own = run(plan).orElseThrow(() -> new AssertionError("refused: " + plan));
    Set<String> columns = new LinkedHashSet<>();
    plan.at("/source/rows").forEach(row -> row.fieldNames().forEachRemaining(columns::add));
    for (Map.Entry<String, ObjectNode> mutant :
        Mutations.of(plan, (ObjectNode) own.full(), columns).entrySet()) {
      Optional<Run> other = run(mutant.getValue());
      if (other.isEmpty()) {
        continue;
      }
      boolean sameResult = other.get().result().equals(own.result());
      boolean sameWords = other.get().paragraphs().equals(own.paragraphs());
      String field = mutant.getKey().substring(0, mutant.getKey().indexOf(' '));
      if (!sameResult && sameWords) {
        wrong.add(mutant.getKey() + ": another result, told alike");
      }
      if (sameResult && !sameWords && other.get().unused().contains(field)) {
        wrong.add(mutant.getKey() + ": without bearing, and told");
      }
    }
    return wrong;
  }

  @TestFactory
  Stream<DynamicTest> whatChangesTheResultChangesTheParagraphAndNothingElseIsSaid()
      throws IOException {
    return plans().entrySet().stream()
        .map(
            plan ->
                DynamicTest.dynamicTest(
                    plan.getKey(),
                    () -> {
                      assertEquals(List.of(), wrong(plan.getValue()));
                      DONE.add(plan.getKey());
                    }));
  }

  @Test
  void everyTaskOfTheSchemaHasAPlanHere() throws IOException {
    Set<String> tasks = new TreeSet<>();
    for (ObjectNode plan : plans().values()) {
      tasks.add(plan.path("task").asText("synthesis"));
    }
    assertEquals(Mutations.tasks(), tasks);
  }

  @Test
  void whatCannotBeDoneForSoManyStudiesIsNotSaidToBeDone() {
    ArrayNode rows = JSON.createArrayNode();
    for (int i = 0; i < 1001; i++) {
      rows.addObject().put("study", "S" + i).put("effect", i % 7).put("variance", 1).put("x", i);
    }
    ObjectNode plan = JSON.createObjectNode().put("measure", "reported-effect");
    plan.put("model", "common-effect").putObject("source").set("rows", rows);
    Set<String> order = said(plan.deepCopy().put("cumulativeBy", "x"));
    assertTrue(order.contains("cumulative.none") && !order.contains("cumulative"), order::toString);
    plan.putArray("moderators").add("x");
    plan.putObject("permutationTest").put("permutations", 100000);
    Set<String> permuted = said(plan);
    assertTrue(permuted.contains("permutation.none"), permuted::toString);
    assertTrue(!permuted.contains("permutation.drawn"), permuted::toString);
  }

  @Test
  void neitherTitleNorNamesOfColumnsMakeAnotherParagraph() throws IOException {
    for (ObjectNode plan : plans().values()) {
      assertEquals(
          run(plan).orElseThrow().paragraphs(),
          run(plan.deepCopy().put("title", "We proved it")).orElseThrow().paragraphs());
    }
  }

  /** Once all plans were changed, every sentence must have been said. */
  @AfterAll
  static void everySentenceIsSaidOfSomePlan() throws IOException {
    if (DONE.equals(plans().keySet())) {
      Set<String> never = new TreeSet<>(MethodSentences.names());
      never.removeAll(SAID);
      // Those of the evidence base are said in SelectionWordsTest.
      never.removeIf(name -> OF_EVIDENCE.stream().anyMatch(name::startsWith));
      // Limits of more than a thousand studies: ManyStudiesTest.
      never.removeAll(
          Set.of(
              "cumulative.none",
              "permutation.none",
              "moderator-limits.errors",
              // Networks too large, or a level too high, for profiles.
              "network.exact.interval-in-part"));
      assertEquals(Set.of(), never);
    }
  }

  private static Set<String> said(ObjectNode plan) {
    return run(plan).orElseThrow().said();
  }
}
