package gapwise.synthesis.smallstudy;

import static gapwise.sentence.Sentences.say;

import java.util.Locale;
import java.util.Map;

/**
 * Sentences beside tests: the pattern, its size, what it could mean, and that it proves nothing.
 */
final class AsymmetryWords {
  private AsymmetryWords() {}

  /** What tells small studies from large ones on a fitted line. */
  enum Line {
    PRECISION,
    INFORMATION,
    SIZE
  }

  /**
   * What a fitted line says.
   *
   * @param difference effect on the line at the least precise study less that at the most precise
   */
  static String line(double difference, Line line) {
    if (difference == 0) {
      return say("analysis.small-and-large-level");
    }
    boolean above = difference > 0;
    String sentence =
        switch (line) {
          case PRECISION -> above ? "analysis.least-precise-above" : "analysis.least-precise-below";
          case INFORMATION ->
              above ? "analysis.least-informative-above" : "analysis.least-informative-below";
          case SIZE -> above ? "analysis.smallest-above" : "analysis.smallest-below";
        };
    return noProof(say(sentence, Map.of("distance", number(Math.abs(difference)))));
  }

  /** A pattern, and what it could mean. */
  private static String noProof(String pattern) {
    return pattern + " " + say("analysis.asymmetry-could-mean");
  }

  /** What ranks say. */
  static String ranks(long score, long pairs) {
    if (score == 0) {
      return say("analysis.less-precise-level");
    }
    double share = 50.0 + 50.0 * Math.abs(score) / pairs;
    return noProof(
        say(
            score > 0 ? "analysis.less-precise-higher" : "analysis.less-precise-lower",
            Map.of("pairs", String.format(Locale.ROOT, "%.0f", share))));
  }

  /** What trim and fill says. */
  static String filled(int added, String side, double before, double after) {
    if (added == 0) {
      return say("analysis.no-study-imagined", Map.of("side", side));
    }
    return say(
        "analysis.studies-imagined",
        Map.of("studies", added, "side", side, "before", number(before), "after", number(after)));
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.3g", value);
  }
}
