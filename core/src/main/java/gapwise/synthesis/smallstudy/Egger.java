package gapwise.synthesis.smallstudy;

import java.util.Arrays;
import java.util.Optional;

/**
 * The standardised effect y/se on the precision 1/se by least squares; an intercept away from 0
 * speaks of asymmetry: Egger et al., BMJ 1997;315:629. Residual scale estimated, t on k - 2.
 */
final class Egger implements SmallStudyTest {
  @Override
  public String name() {
    return "egger";
  }

  @Override
  public AsymmetryFinding find(SmallStudyData data) {
    Optional<Refusal> refusal = data.refusal();
    if (refusal.isPresent()) {
      return new AsymmetryFinding.Refused(refusal.get());
    }
    int k = data.effects().size();
    double[] precision = new double[k];
    double[] standardised = new double[k];
    double[] ones = new double[k];
    Arrays.fill(ones, 1);
    for (int i = 0; i < k; i++) {
      double error = data.standardError(i);
      precision[i] = 1 / error;
      standardised[i] = data.effects().effect(i) / error;
    }
    Optional<LeastSquaresLine> line = LeastSquaresLine.of(precision, standardised, ones);
    return line.flatMap(fit -> fit.testingIntercept(sentence(fit, precision)))
        .orElse(NoVariation.REFUSED);
  }

  /** Divided by the precision the line is y = slope + intercept se. */
  private static String sentence(LeastSquaresLine fit, double[] precision) {
    double largest = 1 / Arrays.stream(precision).min().orElseThrow();
    double smallest = 1 / Arrays.stream(precision).max().orElseThrow();
    return AsymmetryWords.line(
        fit.intercept() * (largest - smallest), AsymmetryWords.Line.PRECISION);
  }
}
