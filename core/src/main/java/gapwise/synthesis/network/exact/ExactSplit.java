package gapwise.synthesis.network.exact;

import gapwise.synthesis.network.Comparison;

/**
 * Direct and indirect evidence for a pair that studies of two arms alone compare.
 *
 * @param direct from the studies that compare the two
 * @param indirect from all others
 * @param difference direct less indirect, with its standard error from the information
 * @param pValue of no difference, by the likelihood ratio
 */
public record ExactSplit(
    Comparison direct, Comparison indirect, Comparison difference, double pValue) {
  /** The same seen from the other side. */
  public ExactSplit reversed() {
    return new ExactSplit(direct.reversed(), indirect.reversed(), difference.reversed(), pValue);
  }
}
