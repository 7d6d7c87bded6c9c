package gapwise.synthesis.multiverse;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * How much analyses weigh. Some families of models have hundreds of variants and others a handful;
 * counted one by one the first would speak for all. So families weigh alike, and within a family
 * its analyses do. With one family every analysis weighs 1. Chosen here, no source.
 */
final class FamilyWeights {
  private final int choice;
  private final Map<Integer, Integer> counts = new HashMap<>();
  private final double each;

  /**
   * Weights of some analyses.
   *
   * @param choice the place of the choice whose levels are the families; negative for none
   */
  FamilyWeights(int choice, List<Multiverse.Analysis> analyses) {
    this.choice = choice;
    for (Multiverse.Analysis analysis : analyses) {
      counts.merge(family(analysis), 1, Integer::sum);
    }
    this.each = analyses.size() / (double) Math.max(1, counts.size());
  }

  private int family(Multiverse.Analysis analysis) {
    return choice < 0 ? Settings.NONE : analysis.settings().level(choice);
  }

  /** The weight of one of the analyses; all of them sum to their number. */
  double of(Multiverse.Analysis analysis) {
    return each / Objects.requireNonNull(counts.get(family(analysis)), "analysis");
  }

  /** How many families there are. */
  int families() {
    return counts.size();
  }
}
