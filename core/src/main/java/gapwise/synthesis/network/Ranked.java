package gapwise.synthesis.network;

import java.util.List;

/**
 * Where a treatment stands among all.
 *
 * @param pScore mean over the others of the normal probability that it is better than the other, 0
 *     to 1 (Rücker and Schwarzer, BMC Med Res Methodol 2015;15:58)
 * @param rankProbabilities share of draws in which it is first, second, ...
 * @param meanRank over draws; 1 is best
 * @param rankLower with {@code rankUpper} the ranks that hold the level's share of draws, or more,
 *     the tails being equal
 */
public record Ranked(
    String treatment,
    double pScore,
    List<Double> rankProbabilities,
    double meanRank,
    int rankLower,
    int rankUpper) {
  public Ranked {
    rankProbabilities = List.copyOf(rankProbabilities);
  }
}
