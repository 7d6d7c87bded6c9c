package gapwise.analysis.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.testing.Networks;
import gapwise.analysis.testing.Plans;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Ranks of treatments and how sure they are. */
class NetworkRankingTest {
  private static ObjectNode plan() {
    return Networks.arms(Networks.eightStudies(), "odds-ratio", "better", "higher");
  }

  /**
   * The expected share of others that a treatment is better than, (T - mean rank)/(T - 1), is its
   * P-score (Rücker and Schwarzer, BMC Med Res Methodol 2015;15:58): four standard errors of a
   * share from 10,000 draws allowed.
   */
  @Test
  void meanRanksFromDrawsAgreeWithPScoresFromNormalProbabilities() {
    JsonNode ranking = Plans.result(plan()).at("/network/ranking");
    assertEquals(4, ranking.size());
    double sum = 0;
    for (JsonNode one : ranking) {
      double share = (4 - one.get("meanRank").asDouble()) / 3;
      assertEquals(one.get("pScore").asDouble(), share, 4 * 0.5 / Math.sqrt(10_000));
      sum += one.get("pScore").asDouble();
    }
    assertEquals(2, sum, 1e-12, "P-scores have a mean of one half");
  }

  @Test
  void probabilitiesOfRanksAddUpToOneForEachTreatmentAndEachRank() {
    JsonNode ranking = Plans.result(plan()).at("/network/ranking");
    double[] ofRank = new double[4];
    for (JsonNode one : ranking) {
      double sum = 0;
      for (int rank = 0; rank < 4; rank++) {
        ofRank[rank] += one.at("/rankProbabilities/" + rank).asDouble();
        sum += one.at("/rankProbabilities/" + rank).asDouble();
      }
      assertEquals(1, sum, 1e-12);
      assertTrue(inside(one) >= 0.95, one::toString);
    }
    for (double sum : ofRank) {
      assertEquals(1, sum, 1e-12);
    }
  }

  /** The share of draws in the interval of ranks. */
  private static double inside(JsonNode one) {
    return IntStream.rangeClosed(one.get("rankLower").asInt(), one.get("rankUpper").asInt())
        .mapToDouble(rank -> one.at("/rankProbabilities/" + (rank - 1)).asDouble())
        .sum();
  }

  @Test
  void theOtherSideOfBetterTurnsTheRanksRound() {
    JsonNode higher = Plans.result(plan()).at("/network/ranking");
    JsonNode lower = Plans.result(plan().put("better", "lower")).at("/network/ranking");
    for (int t = 0; t < 4; t++) {
      assertEquals(
          1, higher.get(t).get("pScore").asDouble() + lower.get(t).get("pScore").asDouble(), 1e-12);
      assertEquals(
          5,
          higher.get(t).get("meanRank").asDouble() + lower.get(t).get("meanRank").asDouble(),
          1e-9);
    }
  }

  @Test
  void theSameSeedGivesTheSameBytesAndAnotherSeedOtherDraws() {
    String first = Plans.result(plan()).toString();
    assertEquals(first, Plans.result(plan()).toString());
    assertNotEquals(
        Plans.result(plan()).at("/network/ranking/0/meanRank"),
        Plans.result(plan().put("seed", 2)).at("/network/ranking/0/meanRank"));
    assertEquals(
        Plans.result(plan()).at("/network/ranking/0/pScore"),
        Plans.result(plan().put("seed", 2)).at("/network/ranking/0/pScore"));
  }

  @Test
  void everyRankingComesWithTheCautionThatRanksHideSizeAndCertainty() {
    assertTrue(Plans.warnings(Plans.result(plan())).contains("ranks-hide-size-and-certainty"));
  }
}
