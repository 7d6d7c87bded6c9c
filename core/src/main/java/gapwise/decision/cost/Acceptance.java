package gapwise.decision.cost;

import java.util.List;

/**
 * Methods at one amount of money for one unit of effect.
 *
 * @param lambda that amount
 * @param shares by method, the share of draws in which it has the highest net benefit, ties shared
 * @param netBenefits by method, its mean net benefit in money
 * @param best place of the method with the highest mean net benefit. The frontier is its share, not
 *     the greatest of the shares: the likeliest to be best is not always best on average (Fenwick,
 *     Claxton and Sculpher, Health Economics 2001;10:779)
 * @param perfectInformation what it would be worth, for one patient, to know everything that is
 *     uncertain here before choosing, in money: mean of the greatest less greatest of the means
 */
public record Acceptance(
    double lambda,
    List<Double> shares,
    List<Double> netBenefits,
    int best,
    double perfectInformation) {
  public Acceptance {
    shares = List.copyOf(shares);
    netBenefits = List.copyOf(netBenefits);
  }

  /** The share of draws in which the method that is best on average is best. */
  public double frontier() {
    return shares.get(best);
  }
}
