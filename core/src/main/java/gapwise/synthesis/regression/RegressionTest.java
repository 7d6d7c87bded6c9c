package gapwise.synthesis.regression;

/** How coefficients are tested and their limits made. */
public enum RegressionTest {
  /**
   * Variances times the weighted mean square of the residuals, not cut at 1; t on k - p, F on p - 1
   * and k - p: Knapp and Hartung, Stat Med 2003;22:2693.
   */
  HARTUNG_KNAPP,
  /** Variances as they are; normal and chi-squared. */
  NORMAL;
}
