package gapwise.synthesis.smallstudy;

import gapwise.effect.TwoByTwo;
import java.util.List;

/**
 * The log odds ratio as pooled on 1/N with weights 1/(1/events + 1/non-events), N all patients of
 * the study: Peters et al., JAMA 2006;295:676. Residual scale estimated, slope tested by t on k -
 * 2. Studies without or only with events are left out.
 */
final class Peters implements SmallStudyTest {
  @Override
  public String name() {
    return "peters";
  }

  @Override
  public AsymmetryFinding find(SmallStudyData data) {
    return OddsRatioOnly.test(data, (tables, used) -> onTables(data, tables, used));
  }

  private static AsymmetryFinding onTables(
      SmallStudyData data, List<TwoByTwo> tables, List<Integer> used) {
    double[] inverse = used.stream().mapToDouble(i -> 1 / tables.get(i).total()).toArray();
    double[] effects = used.stream().mapToDouble(data.effects()::effect).toArray();
    double[] weights =
        used.stream()
            .map(tables::get)
            .mapToDouble(t -> 1 / (1 / t.eventTotal() + 1 / t.nonEventTotal()))
            .toArray();
    double smallest = 0;
    double largest = Double.POSITIVE_INFINITY;
    for (double one : inverse) {
      smallest = Math.max(smallest, one);
      largest = Math.min(largest, one);
    }
    double span = smallest - largest;
    return LeastSquaresLine.of(inverse, effects, weights)
        .flatMap(
            line ->
                line.testingSlope(
                    AsymmetryWords.line(line.slope() * span, AsymmetryWords.Line.SIZE)))
        .orElse(NoVariation.REFUSED);
  }
}
