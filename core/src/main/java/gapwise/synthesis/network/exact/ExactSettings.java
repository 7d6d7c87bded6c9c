package gapwise.synthesis.network.exact;

/**
 * How a network of counts is put together.
 *
 * @param random whether studies differ by a variance of their own; else effects are common
 * @param level of all intervals, above 0 and below 1
 */
public record ExactSettings(boolean random, double level) {
  public ExactSettings {
    if (!(level > 0 && level < 1)) {
      throw new IllegalArgumentException("level must be between 0 and 1, was " + level);
    }
  }
}
