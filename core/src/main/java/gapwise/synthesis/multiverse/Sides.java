package gapwise.synthesis.multiverse;

import java.util.List;

/**
 * On which side of a value, as people read it, pooled values and their intervals lie.
 *
 * @param threshold the value
 * @param analyses how many pooled values there are
 * @param below pooled values below it
 * @param above pooled values above it; the rest equal it
 * @param intervalsBelow intervals that end below it
 * @param intervalsAbove intervals that begin above it; the rest include it
 */
public record Sides(
    double threshold, int analyses, int below, int above, int intervalsBelow, int intervalsAbove) {

  static Sides of(List<AnalysisFinding.Estimated> findings, double threshold) {
    int below = 0;
    int above = 0;
    int intervalsBelow = 0;
    int intervalsAbove = 0;
    for (AnalysisFinding.Estimated finding : findings) {
      below += finding.shownEstimate() < threshold ? 1 : 0;
      above += finding.shownEstimate() > threshold ? 1 : 0;
      intervalsBelow += finding.shownUpper() < threshold ? 1 : 0;
      intervalsAbove += finding.shownLower() > threshold ? 1 : 0;
    }
    return new Sides(threshold, findings.size(), below, above, intervalsBelow, intervalsAbove);
  }

  /** Intervals that include the value. */
  public int intervalsIncluding() {
    return analyses - intervalsBelow - intervalsAbove;
  }
}
