package gapwise.synthesis.network;

/**
 * The evidence for a pair of treatments by its way through the network.
 *
 * @param direct from the studies that compare the two
 * @param indirect from all other studies
 */
public record Split(Comparison direct, Comparison indirect) {
  /** Direct less indirect; the two share no study, so their variances add. */
  public Comparison difference() {
    return direct.less(indirect);
  }

  /** The same seen from the other side. */
  public Split reversed() {
    return new Split(direct.reversed(), indirect.reversed());
  }
}
