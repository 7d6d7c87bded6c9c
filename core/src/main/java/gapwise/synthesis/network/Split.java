package gapwise.synthesis.network;

/**
 * The evidence for a pair of treatments by its way through the network.
 *
 * @param direct from the studies that compare the two
 * @param indirect from all others
 * @param difference direct less indirect
 * @param sides whether studies of more than two arms hold the pair, so that the two share studies
 */
public record Split(Comparison direct, Comparison indirect, Comparison difference, boolean sides) {
  /** Of ways that share no study, whose variances add. */
  static Split independent(Comparison direct, Comparison indirect) {
    return new Split(direct, indirect, direct.less(indirect), false);
  }

  /** The same seen from the other side. */
  public Split reversed() {
    return new Split(direct.reversed(), indirect.reversed(), difference.reversed(), sides);
  }
}
