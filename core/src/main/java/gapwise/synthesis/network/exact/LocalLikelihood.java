package gapwise.synthesis.network.exact;

/**
 * The log likelihood of one study, or of all, with its first and second derivatives by some numbers
 * and, last, the standard deviation between studies.
 */
final class LocalLikelihood {
  double value;
  final double[] slopes;
  final double[][] bends;

  LocalLikelihood(int size) {
    slopes = new double[size];
    bends = new double[size][size];
  }
}
