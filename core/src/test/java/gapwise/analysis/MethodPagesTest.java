package gapwise.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.testing.PublishedChecks;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicContainer;
import org.junit.jupiter.api.DynamicNode;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * The worked examples in docs/methods. A block fenced as {@code json plan} is run; the table after
 * it, headed {@code place in the result | value}, must hold to the last digit printed there.
 */
class MethodPagesTest {
  private static final Path PAGES = Path.of("..", "docs", "methods");

  /**
   * Pages of what is no task of a plan: DecisionPagesTest holds the examples of decisions, the
   * tests named on the pages what is said of papers and sheets.
   */
  private static final Set<String> WITHOUT_A_PLAN =
      Set.of(
          "certainty.md",
          "cost.md",
          "duplicates.md",
          "overlapping-cohorts.md",
          "reading-papers.md",
          "untidy-sheets.md",
          "weighing.md");

  /** One line of a table: where a value stands and what is printed. */
  private record Line(String place, String printed) {}

  private record Example(String plan, List<Line> lines) {}

  @TestFactory
  List<DynamicNode> everyPageHasAnExampleThatHolds() throws IOException {
    List<DynamicNode> pages = new ArrayList<>();
    try (Stream<Path> files = Files.list(PAGES)) {
      for (Path page : files.filter(MethodPagesTest::hasPlans).sorted().toList()) {
        List<Example> examples = examples(Files.readAllLines(page));
        List<DynamicTest> tests = new ArrayList<>();
        tests.add(
            DynamicTest.dynamicTest(
                "has an example",
                () -> assertTrue(examples.stream().anyMatch(e -> !e.lines().isEmpty()))));
        examples.forEach(example -> tests.addAll(tests(example)));
        pages.add(DynamicContainer.dynamicContainer(page.getFileName().toString(), tests));
      }
    }
    return pages;
  }

  private static boolean hasPlans(Path file) {
    String name = file.getFileName().toString();
    return name.endsWith(".md") && !WITHOUT_A_PLAN.contains(name);
  }

  private static List<DynamicTest> tests(Example example) {
    JsonNode result =
        Runner.withoutEvidence().run(example.plan(), Optional.of(PAGES.toAbsolutePath())).json();
    List<DynamicTest> tests = new ArrayList<>();
    tests.add(
        DynamicTest.dynamicTest(
            "the plan is taken", () -> assertFalse(result.has("problems"), result::toString)));
    for (Line line : example.lines()) {
      tests.add(DynamicTest.dynamicTest(line.place(), () -> verify(line, result)));
    }
    return tests;
  }

  private static void verify(Line line, JsonNode result) {
    JsonNode found = PublishedChecks.at(result, line.place());
    assertFalse(found.isMissingNode(), () -> "nothing at " + line.place() + " in " + result);
    if (found.isNumber()) {
      double half = new BigDecimal(line.printed()).ulp().doubleValue() / 2;
      assertEquals(Double.parseDouble(line.printed()), found.asDouble(), half * (1 + 1e-9));
    } else {
      assertEquals(line.printed(), found.asText());
    }
  }

  private static List<Example> examples(List<String> page) {
    List<Example> examples = new ArrayList<>();
    for (int i = 0; i < page.size(); i++) {
      if (page.get(i).equals("```json plan")) {
        int end = i + 1 + page.subList(i + 1, page.size()).indexOf("```");
        examples.add(
            new Example(
                String.join("\n", page.subList(i + 1, end)),
                lines(page.subList(end + 1, page.size()))));
        i = end;
      }
    }
    return examples;
  }

  /** The lines of the first table, if it comes before the next fenced block. */
  private static List<Line> lines(List<String> rest) {
    List<Line> lines = new ArrayList<>();
    boolean inside = false;
    for (String line : rest) {
      boolean row = line.startsWith("|");
      if (line.startsWith("```") || (inside && !row)) {
        break;
      }
      if (row && inside && !line.startsWith("| -")) {
        String[] cells = line.split("\\|");
        lines.add(new Line(cells[1].strip().replace("`", ""), cells[2].strip()));
      }
      inside |= line.startsWith("| place in the result |");
    }
    return lines;
  }
}
