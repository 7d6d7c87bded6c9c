package gapwise.synthesis.smallstudy;

import gapwise.effect.TwoByTwo;
import java.util.Arrays;
import java.util.List;

/**
 * The efficient score over the root of its information, Z/root(V), on that root, from raw counts
 * with the hypergeometric information: Harbord, Egger and Sterne, Stat Med 2006;25:3443. Residual
 * scale estimated, intercept tested by t on k - 2. Studies without or only with events are left
 * out.
 */
final class Harbord implements SmallStudyTest {
  @Override
  public String name() {
    return "harbord";
  }

  @Override
  public AsymmetryFinding find(SmallStudyData data) {
    return OddsRatioOnly.test(data, Harbord::onTables);
  }

  private static AsymmetryFinding onTables(List<TwoByTwo> tables, List<Integer> used) {
    double[] roots =
        used.stream().mapToDouble(i -> Math.sqrt(tables.get(i).hypergeometricVariance())).toArray();
    double[] scores =
        used.stream().map(tables::get).mapToDouble(Harbord::standardisedScore).toArray();
    double[] ones = new double[roots.length];
    Arrays.fill(ones, 1);
    // Divided by the root of V the line is Z/V = slope + intercept/root(V), a log odds ratio.
    double span =
        1 / Arrays.stream(roots).min().orElseThrow() - 1 / Arrays.stream(roots).max().orElseThrow();
    return LeastSquaresLine.of(roots, scores, ones)
        .flatMap(
            line ->
                line.testingIntercept(
                    AsymmetryWords.line(line.intercept() * span, AsymmetryWords.Line.INFORMATION)))
        .orElse(NoVariation.REFUSED);
  }

  private static double standardisedScore(TwoByTwo table) {
    double expected = table.intervention().total() * (table.eventTotal() / table.total());
    return (table.intervention().events() - expected) / Math.sqrt(table.hypergeometricVariance());
  }
}
