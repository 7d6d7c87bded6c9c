package gapwise.synthesis.smallstudy;

import java.util.Locale;

/**
 * Sentences beside tests: the pattern, its size, what it could mean, and that it proves nothing.
 */
final class AsymmetryWords {
  private static final String COULD_MEAN =
      " Results that were never published, weaker methods or other patients in small studies, or"
          + " chance could each give such a pattern; it is no proof of any of them.";

  private AsymmetryWords() {}

  /**
   * What a fitted line says.
   *
   * @param difference effect on the line at the least precise study less that at the most precise
   * @param precise what is told of the study at the far end, such as "least precise"
   * @param other of the study at the near end
   */
  static String line(double difference, String precise, String other) {
    if (difference == 0) {
      return "On the fitted line small and large studies lie level.";
    }
    return "On the fitted line the "
        + precise
        + " study lies "
        + number(Math.abs(difference))
        + (difference > 0 ? " above" : " below")
        + " the "
        + other
        + " one, on the analysis scale."
        + COULD_MEAN;
  }

  /** What ranks say. */
  static String ranks(long score, long pairs) {
    if (score == 0) {
      return "The less precise study of a pair has the higher effect as often as the lower.";
    }
    double share = 50.0 + 50.0 * Math.abs(score) / pairs;
    return String.format(Locale.ROOT, "In %.0f of 100 pairs of studies the less precise", share)
        + " one has the "
        + (score > 0 ? "higher" : "lower")
        + " effect, each set against the common effect."
        + COULD_MEAN;
  }

  /** What trim and fill says. */
  static String filled(int added, String side, double before, double after) {
    if (added == 0) {
      return "By this rule no study is missing on the "
          + side
          + " of the funnel; that does not show that none is.";
    }
    return "By this rule "
        + added
        + (added == 1 ? " study is" : " studies are")
        + " imagined on the "
        + side
        + " of the funnel; with "
        + (added == 1 ? "it" : "them")
        + " the pooled value moves from "
        + number(before)
        + " to "
        + number(after)
        + " on the analysis scale. Imagined studies are no data: this shows how far the result could"
        + " hang on unseen ones, not what it would be with them.";
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.3g", value);
  }
}
