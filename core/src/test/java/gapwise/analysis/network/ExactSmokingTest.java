package gapwise.analysis.network;

import static gapwise.analysis.testing.Networks.effect;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Networks;
import gapwise.analysis.testing.Plans;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The 24 smoking cessation trials (Hasselblad, Med Decis Making 1998;18:37), two of three arms, one
 * with an empty cell. Counts are mostly large, so both likelihoods say nearly the same.
 */
class ExactSmokingTest {
  private static final Path TRIALS =
      Path.of("src/test/resources/published/smoking-cessation-network")
          .resolve("smoking-cessation-network.csv");

  private static ArrayNode rows() throws IOException {
    ArrayNode rows = Plans.rows();
    List<String> lines = Files.readAllLines(TRIALS, StandardCharsets.UTF_8);
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.replace("\"", "").split(",");
      int last = cells.length - 1;
      Networks.arm(
          rows,
          cells[0],
          cells[last - 2],
          "events",
          Double.parseDouble(cells[last - 1]),
          "total",
          Double.parseDouble(cells[last]));
    }
    return rows;
  }

  private static ObjectNode plan() throws IOException {
    return Networks.arms(rows(), "odds-ratio", "reference", "no contact", "better", "higher");
  }

  @Test
  void theExactLikelihoodSaysNearlyWhatTheNormalOneDoes() throws IOException {
    JsonNode exact = Plans.result(plan().put("likelihood", "conditional"));
    JsonNode normal = Plans.result(plan().put("betweenStudyVariance", "maximum-likelihood"));
    for (String one : List.of("group counselling", "individual counselling", "self-help")) {
      JsonNode found = effect(exact, one, "no contact");
      JsonNode near = effect(normal, one, "no contact");
      double error = near.get("standardError").asDouble();
      // Half events draw the trial of 0 of 20 against 9 of 20, and small ones, towards no
      // difference.
      double further = found.get("estimate").asDouble() - near.get("estimate").asDouble();
      assertTrue(further > 0 && further < 0.6 * error, one + " " + further);
      assertEquals(1, found.get("standardError").asDouble() / error, 0.1);
    }
    assertTrue(exact.at("/fit/converged").asBoolean());
  }
}
