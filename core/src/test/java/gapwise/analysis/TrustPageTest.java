package gapwise.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.testing.PublishedChecks;
import gapwise.analysis.testing.PublishedChecks.BoundPlan;
import gapwise.analysis.testing.PublishedChecks.Check;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The table of agreement in docs/trust.md is what the published values give today. */
class TrustPageTest {
  private static final Path PAGE = Path.of("..", "docs", "trust.md");
  private static final double SIX_DIGITS = 1e-6;

  /** Values of one data set: all numbers, and those that agree to six digits. */
  private record Agreement(int numbers, int sixDigits) {
    Agreement plus(Agreement other) {
      return new Agreement(numbers + other.numbers, sixDigits + other.sixDigits);
    }
  }

  private static Map<String, Agreement> agreements() {
    Runner runner = Runner.withoutEvidence();
    Map<String, Agreement> all = new TreeMap<>();
    for (BoundPlan plan : PublishedChecks.all()) {
      JsonNode json = runner.run(plan.plan(), Optional.of(plan.folder())).json();
      Agreement sum =
          plan.checks().stream()
              .map(check -> agreement(check, json))
              .reduce(new Agreement(0, 0), Agreement::plus);
      all.merge(plan.dataset(), sum, Agreement::plus);
    }
    return all;
  }

  private static Agreement agreement(Check check, JsonNode json) {
    if (!check.binding().has("path")) {
      return new Agreement(0, 0);
    }
    double found = PublishedChecks.at(json, check.binding().get("path").asText()).asDouble();
    double expected = check.expected().get("value").asDouble();
    boolean close = Math.abs(found - expected) <= SIX_DIGITS * Math.max(1e-3, Math.abs(expected));
    return new Agreement(1, close ? 1 : 0);
  }

  @Test
  void theTableSaysWhatTheValuesGive() throws IOException {
    List<String> rows;
    try (Stream<String> lines = Files.lines(PAGE)) {
      rows = lines.filter(line -> line.startsWith("| `")).toList();
    }
    List<String> expected =
        agreements().entrySet().stream()
            .filter(one -> one.getValue().numbers() > 0)
            .map(
                one ->
                    "| `%s` | %,d | %,d |"
                        .formatted(
                            one.getKey(), one.getValue().numbers(), one.getValue().sixDigits()))
            .toList();
    assertEquals(String.join("\n", expected), String.join("\n", rows));
    assertTrue(rows.size() > 10);
  }
}
