package gapwise.synthesis.smallstudy;

import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.pooling.InverseVariance;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What must be known beside tests that were made though the data suit them badly. */
public final class Cautions {
  /**
   * I squared from which heterogeneity drowns asymmetry: Ioannidis and Trikalinos, CMAJ
   * 2007;176:1091.
   */
  private static final double MOST_I_SQUARED = 0.5;

  private Cautions() {}

  /**
   * The cautions.
   *
   * @param made the tests that were not refused
   */
  public static List<Caution> of(SmallStudyData data, List<SmallStudyTest> made) {
    if (made.isEmpty()) {
      return List.of();
    }
    List<Caution> cautions = new ArrayList<>();
    boolean filled = made.stream().anyMatch(TrimAndFill.class::isInstance);
    if (filled && data.effects().size() < SmallStudyData.FEWEST) {
      cautions.add(new Caution.FewFilled(data.effects().size()));
    }
    boolean asymmetry = made.stream().anyMatch(test -> !(test instanceof TrimAndFill));
    if (asymmetry && data.effects().size() < SmallStudyData.FEWEST) {
      cautions.add(new Caution.FewTested(data.effects().size()));
    }
    boolean tested = made.stream().anyMatch(Cautions::setsEffectsAgainstErrors);
    if (tested && data.errorFollowsEffect()) {
      cautions.add(new Caution.ErrorFollowsEffect(data.tables().isPresent()));
    }
    if (similarSize(data.effects())) {
      cautions.add(new Caution.SimilarSize());
    }
    heterogeneity(data, filled).ifPresent(cautions::add);
    return cautions;
  }

  private static boolean setsEffectsAgainstErrors(SmallStudyTest test) {
    return test instanceof Egger || test instanceof EggerRandom || test instanceof Begg;
  }

  private static boolean similarSize(EffectSample effects) {
    double smallest = Double.POSITIVE_INFINITY;
    double largest = 0;
    for (int i = 0; i < effects.size(); i++) {
      smallest = Math.min(smallest, effects.variance(i));
      largest = Math.max(largest, effects.variance(i));
    }
    return !(largest > Caution.SimilarSize.LEAST_RATIO * smallest);
  }

  private static Optional<Caution> heterogeneity(SmallStudyData data, boolean filled) {
    double iSquared =
        InverseVariance.pool(data.effects(), data.settings().withCommonEffect())
            .heterogeneity()
            .iSquaredFromQ()
            .orElse(0);
    return iSquared < MOST_I_SQUARED
        ? Optional.empty()
        : Optional.of(new Caution.Heterogeneous(Math.round(100 * iSquared), filled));
  }
}
