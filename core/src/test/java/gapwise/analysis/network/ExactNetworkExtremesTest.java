package gapwise.analysis.network;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import gapwise.analysis.testing.Networks;
import gapwise.analysis.testing.Plans;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Counts of any kind give an answer of finite numbers or say why there is none. */
class ExactNetworkExtremesTest {
  private static final int[] TOTALS = {1, 2, 7, 40, 900};

  private static final Set<String> REASONS =
      Set.of("estimate-at-limit", "no-studies", "no-events", "all-events", "did-not-converge");

  @Test
  void networksOfAnyCountsHaveAnAnswerOrAReason() {
    Random random = new Random(20);
    for (int turn = 0; turn < 40; turn++) {
      ArrayNode rows = rows(random);
      JsonNode result =
          Plans.result(
              Networks.arms(
                  rows,
                  "odds-ratio",
                  "likelihood",
                  "conditional",
                  "networkEffects",
                  random.nextInt(4) == 0 ? "common" : "random",
                  "better",
                  "lower"));
      if (result.has("network")) {
        for (JsonNode effect : result.at("/network/effects")) {
          double estimate = effect.get("estimate").asDouble();
          assertTrue(
              effect.get("lower").asDouble() < estimate
                  && estimate < effect.get("upper").asDouble(),
              rows::toString);
        }
      } else {
        List<String> codes = result.get("warnings").findValuesAsText("code");
        assertTrue(codes.stream().anyMatch(REASONS::contains), codes + " " + rows);
      }
    }
  }

  private static ArrayNode rows(Random random) {
    ArrayNode rows = Plans.rows();
    int studies = 1 + random.nextInt(6);
    for (int s = 0; s < studies; s++) {
      List<String> treatments = new ArrayList<>(List.of("a", "b", "c", "d"));
      Collections.shuffle(treatments, random);
      int arms = 2 + (random.nextInt(4) == 0 ? 1 : 0);
      for (String treatment : treatments.subList(0, arms)) {
        int total = TOTALS[random.nextInt(TOTALS.length)];
        int events =
            switch (random.nextInt(5)) {
              case 0 -> 0;
              case 1 -> total;
              default -> random.nextInt(total + 1);
            };
        Networks.arm(rows, "S" + s, treatment, "events", events, "total", total);
      }
    }
    return rows;
  }
}
