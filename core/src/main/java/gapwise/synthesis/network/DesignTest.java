package gapwise.synthesis.network;

/**
 * Differences between the studies of one design.
 *
 * @param design its treatments joined by a colon
 * @param test against chance alone
 */
public record DesignTest(String design, ChiSquaredTest test) {}
