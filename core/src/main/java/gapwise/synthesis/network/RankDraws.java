package gapwise.synthesis.network;

/**
 * How ranks are simulated.
 *
 * @param seed of the draws; the same gives the same ranks
 * @param draws at least 1
 */
public record RankDraws(long seed, int draws) {
  public RankDraws {
    if (draws < 1) {
      throw new IllegalArgumentException("draws must be at least 1, was " + draws);
    }
  }
}
