package gapwise.synthesis.likelihood;

import java.util.List;

/** Places from which a search that has ended at a tau of 0 starts again. */
final class FurtherStarts {
  private FurtherStarts() {}

  /** Mean and tau of each; with intercepts second tops are commoner, so more places are tried. */
  static List<double[]> of(StudyLikelihoods studies) {
    double[] middle = unweighted(studies);
    if (!studies.hasIntercepts()) {
      return List.of(middle);
    }
    return List.of(
        middle,
        new double[] {middle[0], 0.7},
        new double[] {middle[0], 1.5},
        new double[] {middle[0], 4});
  }

  /** Mean and standard deviation of the studies' own values. */
  private static double[] unweighted(StudyLikelihoods studies) {
    int k = studies.size();
    double mean = 0;
    for (int i = 0; i < k; i++) {
      mean += studies.start(i) / k;
    }
    double squares = 0;
    for (int i = 0; i < k; i++) {
      squares += (studies.start(i) - mean) * (studies.start(i) - mean) / k;
    }
    return new double[] {mean, Math.sqrt(squares) + 0.1};
  }
}
