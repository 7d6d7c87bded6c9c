package gapwise.synthesis.survival;

import java.util.Optional;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Whether events come equally fast in two groups, without continuity correction: (observed -
 * expected)^2 over the hypergeometric variance, summed over event times (Mantel, Cancer Chemother
 * Rep 1966;50:163) and, if there are several, over strata.
 *
 * @param observed events in the group
 * @param expected events in the group, were they equally fast in both
 * @param chiSquared on one degree of freedom
 * @param pValue its upper tail
 */
public record LogRank(double observed, double expected, double chiSquared, double pValue) {

  /** The test; empty if the two groups were never at risk together when an event came. */
  static Optional<LogRank> of(Iterable<PairedRisk> table) {
    double observed = 0;
    double expected = 0;
    double variance = 0;
    for (PairedRisk at : table) {
      double all = at.allAtRisk();
      double share = at.atRisk() / all;
      observed += at.events();
      expected += at.allEvents() * share;
      if (at.allAtRisk() > 1) {
        variance += at.allEvents() * share * (1 - share) * (all - at.allEvents()) / (all - 1);
      }
    }
    if (variance == 0) {
      return Optional.empty();
    }
    double chiSquared = (observed - expected) * (observed - expected) / variance;
    return Optional.of(
        new LogRank(
            observed,
            expected,
            chiSquared,
            ChiSquaredDistribution.of(1).survivalProbability(chiSquared)));
  }
}
