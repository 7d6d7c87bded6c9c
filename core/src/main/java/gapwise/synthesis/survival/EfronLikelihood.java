package gapwise.synthesis.survival;

import gapwise.budget.Work;
import gapwise.numeric.BracketedRoot;
import gapwise.problem.Problem;
import java.util.List;

/**
 * Cox's partial likelihood of one covariate, group or not, with Efron's handling of ties (Cox, J R
 * Stat Soc B 1972;34:187; Efron, J Am Stat Assoc 1977;72:557). Of d events at one time the l-th (l
 * = 0 ... d-1) sees each group's number at risk less l/d of the group's own events.
 *
 * <p>The score falls strictly, so its limits at both infinities tell whether a maximum exists. They
 * are counts: upwards, less the events of the other group that came while this one was at risk;
 * downwards, the events of this group that came while the other was at risk. A count of 0 means a
 * likelihood that rises without end, which is told, not followed.
 */
final class EfronLikelihood {
  /** No finite maximum lies farther out, with fewer than 1e9 patients. */
  private static final double FARTHEST = 700;

  private final List<PairedRisk> table;

  EfronLikelihood(List<PairedRisk> table) {
    this.table = table;
  }

  HazardRatio maximum() {
    boolean rises = table.stream().noneMatch(at -> at.eventsAgainst() > 0 && at.atRisk() > 0);
    boolean falls = table.stream().noneMatch(at -> at.events() > 0 && at.atRiskAgainst() > 0);
    if (rises && falls) {
      return none(
          "no-information",
          "the two groups were never at risk together when an event came, so their hazards cannot"
              + " be compared");
    }
    if (rises || falls) {
      return none(
          "monotone-likelihood",
          "while both groups were at risk, events came in "
              + (rises ? "the first" : "the second")
              + " only, so the likelihood of the hazard ratio rises without end and the ratio has"
              + " no estimate; the log-rank test still stands");
    }
    double reach = 1;
    while (reach < FARTHEST && !(score(-reach) > 0 && score(reach) < 0)) {
      reach *= 2;
    }
    if (!BracketedRoot.brackets(score(-reach), score(reach))) {
      return none(
          "monotone-likelihood", "the maximum of the likelihood lies too far out to be told");
    }
    double estimate = BracketedRoot.find(this::score, -reach, reach).value();
    return new HazardRatio.Estimated(estimate, 1 / Math.sqrt(information(estimate)));
  }

  private static HazardRatio none(String code, String message) {
    return new HazardRatio.NotEstimable(new Problem("", code, message));
  }

  /** First derivative of the log likelihood: events of the group less those expected. */
  double score(double logRatio) {
    Work.check();
    double sum = 0;
    for (PairedRisk at : table) {
      sum += at.events();
      for (int l = 0; l < at.allEvents(); l++) {
        sum -= share(at, l, logRatio);
      }
    }
    return sum;
  }

  /** Less the second derivative. */
  double information(double logRatio) {
    double sum = 0;
    for (PairedRisk at : table) {
      for (int l = 0; l < at.allEvents(); l++) {
        double share = share(at, l, logRatio);
        sum += share * (1 - share);
      }
    }
    return sum;
  }

  /** The probability that the next event falls to the group. */
  private static double share(PairedRisk at, int l, double logRatio) {
    double gone = (double) l / at.allEvents();
    double own = at.atRisk() - gone * at.events();
    double other = at.atRiskAgainst() - gone * at.eventsAgainst();
    if (own == 0) {
      return 0;
    }
    return 1 / (1 + other / own * Math.exp(-logRatio));
  }
}
