package gapwise.synthesis.network;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RankingTest {
  private static final int DRAWS = 20_000;

  /** So many standard deviations of a share of draws are as good as never passed. */
  private static final double MOST = 5;

  /** Treatment b lies one standard error above a. */
  private static List<Ranked> oneErrorApart(boolean higherIsBetter, long seed) {
    Network.Fitted fitted =
        Network.of(
            List.of(new NetworkStudy("s", List.of("a", "b"), List.of(0.5), List.of(List.of(0.25)))),
            "a",
            new NetworkSettings(
                Optional.empty(),
                NetworkPredictions.Spread.UNKNOWN,
                TauSquaredInterval.Q_PROFILE,
                0.95));
    return ((Network.Fitted.Done) fitted)
        .network()
        .ranking(higherIsBetter, new RankDraws(seed, DRAWS))
        .orElseThrow();
  }

  @Test
  void pScoreOfTwoIsTheNormalProbabilityOfTheirDifference() {
    // Ruecker and Schwarzer 2015; 0.84134 below one standard error (Abramowitz and Stegun 26.1).
    List<Ranked> ranked = oneErrorApart(true, 1);
    assertEquals(0.84134, ranked.get(1).pScore(), 5e-6);
    assertEquals(1, ranked.get(0).pScore() + ranked.get(1).pScore(), 1e-15);
  }

  @Test
  void lowerIsBetterTurnsScoresOver() {
    assertEquals(
        oneErrorApart(true, 1).get(1).pScore(), oneErrorApart(false, 1).get(0).pScore(), 1e-15);
  }

  @Test
  void drawsComeNearTheProbabilityTheyStandFor() {
    double p = 0.8413447;
    double error = Math.sqrt(p * (1 - p) / DRAWS);
    for (long seed = 1; seed <= 5; seed++) {
      assertEquals(p, oneErrorApart(true, seed).get(1).rankProbabilities().get(0), MOST * error);
    }
  }

  @Test
  void sharesOfEachTreatmentAndEachRankSumToOne() {
    List<Ranked> ranked = oneErrorApart(true, 3);
    for (int i = 0; i < 2; i++) {
      int rank = i;
      assertEquals(1, ranked.get(i).rankProbabilities().stream().mapToDouble(p -> p).sum(), 1e-12);
      assertEquals(
          1, ranked.stream().mapToDouble(r -> r.rankProbabilities().get(rank)).sum(), 1e-12);
    }
  }

  @Test
  void meanRankIsTheMeanOverItsShares() {
    Ranked best = oneErrorApart(true, 4).get(1);
    assertEquals(
        best.rankProbabilities().get(0) + 2 * best.rankProbabilities().get(1),
        best.meanRank(),
        1e-12);
    // A sixth of the draws puts it second, more than the tail of 2.5 %.
    assertEquals(1, best.rankLower());
    assertEquals(2, best.rankUpper());
  }

  @Test
  void theSameSeedGivesTheSameRanks() {
    assertEquals(oneErrorApart(true, 9), oneErrorApart(true, 9));
  }
}
