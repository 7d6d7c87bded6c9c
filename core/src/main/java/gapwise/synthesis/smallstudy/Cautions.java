package gapwise.synthesis.smallstudy;

import static gapwise.sentence.Sentences.say;

import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.pooling.InverseVariance;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What must be known beside tests that were made though the data suit them badly. */
public final class Cautions {
  /**
   * Ratio of the largest to the smallest variance below which studies are too much of one size:
   * Ioannidis and Trikalinos, CMAJ 2007;176:1091.
   */
  private static final double LEAST_RATIO = 4;

  /** I squared from which heterogeneity drowns asymmetry, by the same authors. */
  private static final double MOST_I_SQUARED = 0.5;

  private Cautions() {}

  /**
   * The cautions.
   *
   * @param made the tests that were not refused
   */
  public static List<Problem> of(SmallStudyData data, List<SmallStudyTest> made) {
    if (made.isEmpty()) {
      return List.of();
    }
    List<Problem> cautions = new ArrayList<>();
    boolean filled = made.stream().anyMatch(TrimAndFill.class::isInstance);
    if (filled && data.effects().size() < SmallStudyData.FEWEST) {
      cautions.add(
          new Problem(
              "",
              "too-few-for-small-study-test",
              say(
                  "analysis.too-few-to-fill",
                  Map.of("studies", data.effects().size(), "fewest", SmallStudyData.FEWEST))));
    }
    boolean tested = made.stream().anyMatch(Cautions::setsEffectsAgainstErrors);
    if (tested && data.errorFollowsEffect()) {
      cautions.add(
          new Problem(
              "",
              "standard-error-follows-effect",
              say(
                  data.tables().isPresent()
                      ? "analysis.error-follows-effect-unlike-counts"
                      : "analysis.error-follows-effect")));
    }
    similarSize(data.effects()).ifPresent(cautions::add);
    heterogeneity(data, filled).ifPresent(cautions::add);
    return cautions;
  }

  private static boolean setsEffectsAgainstErrors(SmallStudyTest test) {
    return test instanceof Egger || test instanceof EggerRandom || test instanceof Begg;
  }

  private static Optional<Problem> similarSize(EffectSample effects) {
    double smallest = Double.POSITIVE_INFINITY;
    double largest = 0;
    for (int i = 0; i < effects.size(); i++) {
      smallest = Math.min(smallest, effects.variance(i));
      largest = Math.max(largest, effects.variance(i));
    }
    return largest > LEAST_RATIO * smallest
        ? Optional.empty()
        : Optional.of(
            new Problem(
                "",
                "studies-of-similar-size",
                say("analysis.of-similar-size", Map.of("ratio", (int) LEAST_RATIO))));
  }

  private static Optional<Problem> heterogeneity(SmallStudyData data, boolean filled) {
    double iSquared =
        InverseVariance.pool(data.effects(), data.settings().withCommonEffect())
            .heterogeneity()
            .iSquaredFromQ()
            .orElse(0);
    return iSquared < MOST_I_SQUARED
        ? Optional.empty()
        : Optional.of(
            new Problem(
                "",
                "small-study-test-with-heterogeneity",
                say(
                    filled
                        ? "analysis.funnel-of-unlike-studies-filled"
                        : "analysis.funnel-of-unlike-studies",
                    Map.of("percent", Math.round(100 * iSquared)))));
  }
}
