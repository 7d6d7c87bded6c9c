package gapwise.synthesis.multiverse;

/** What one analysis found. */
public sealed interface AnalysisFinding {
  /**
   * A pooled value, on the analysis scale and as people read it.
   *
   * @param studies how many were pooled
   */
  record Estimated(
      double estimate,
      double lower,
      double upper,
      double shownEstimate,
      double shownLower,
      double shownUpper,
      int studies)
      implements AnalysisFinding {}

  /**
   * No pooled value.
   *
   * @param code why, a kebab-case word
   */
  record NotEstimated(String code) implements AnalysisFinding {}
}
