package gapwise.coverage;

/**
 * How one method fared in one scenario, or in several together.
 *
 * @param replicates drawn
 * @param intervals how many times there was one
 * @param covered how many of these held what they should
 * @param width sum of the widths, in the measure of the family
 */
record Coverage(int replicates, int intervals, int covered, double width) {
  static final Coverage NOTHING = new Coverage(0, 0, 0, 0);

  Coverage and(Coverage other) {
    return new Coverage(
        replicates + other.replicates,
        intervals + other.intervals,
        covered + other.covered,
        width + other.width);
  }

  /** Percent of the intervals that there were. */
  double percent() {
    return 100.0 * covered / intervals;
  }

  /** Mean width of these, in the measure of the family. */
  double meanWidth() {
    return width / intervals;
  }

  /** Percent of replicates without an interval. */
  double withoutPercent() {
    return 100.0 * (replicates - intervals) / replicates;
  }
}
