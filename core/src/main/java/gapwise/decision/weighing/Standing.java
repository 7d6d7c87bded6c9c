package gapwise.decision.weighing;

import java.util.List;
import java.util.Optional;

/**
 * How one alternative fares.
 *
 * @param alternative which
 * @param ranks share of weighings at each rank from the best, 0 to 1, adding up to 1; ties shared
 * @param favour wishes under which it comes first; empty where it does under none of those drawn
 */
public record Standing(Alternative alternative, List<Double> ranks, Optional<Favour> favour) {
  /**
   * The wishes that favour an alternative.
   *
   * @param weights the mean of the weights with which it came first, by criterion
   * @param confidence share of the outcomes, 0 to 1, in which it comes first with just these
   *     weights: low where not wishes but outcomes leave open which is best
   */
  public record Favour(List<Double> weights, double confidence) {
    public Favour {
      weights = List.copyOf(weights);
    }
  }

  public Standing {
    ranks = List.copyOf(ranks);
  }

  /** Share of weighings in which it comes first. */
  public double first() {
    return ranks.get(0);
  }
}
