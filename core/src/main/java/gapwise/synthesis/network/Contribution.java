package gapwise.synthesis.network;

/**
 * What the studies of one direct comparison contribute to a comparison of the network.
 *
 * @param treatment one of the pair that is compared directly
 * @param against the other
 * @param share above 0, up to 1
 */
public record Contribution(String treatment, String against, double share) {}
