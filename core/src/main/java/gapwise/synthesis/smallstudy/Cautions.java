package gapwise.synthesis.smallstudy;

import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.pooling.InverseVariance;
import java.util.ArrayList;
import java.util.List;
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
              "trim and fill of "
                  + data.effects().size()
                  + " studies: with fewer than "
                  + SmallStudyData.FEWEST
                  + " chance alone makes a funnel uneven, so do not read the imagined studies as"
                  + " missing ones"));
    }
    boolean tested = made.stream().anyMatch(Cautions::setsEffectsAgainstErrors);
    if (tested && data.errorFollowsEffect()) {
      cautions.add(
          new Problem(
              "",
              "standard-error-follows-effect",
              "the standard error of this measure is worked out from the same numbers as the effect,"
                  + " so effects and errors hang together even without small-study effects and"
                  + " tests by regression and rank find too many (Schwarzer et al., Stat Med"
                  + " 2002;21:2465; for proportions Hunter et al., J Clin Epidemiol 2014;67:897; for"
                  + " standardised means Zwetsloot et al., eLife 2017;6:e24260)"
                  + (data.tables().isPresent() ? "; 'peters' and 'harbord' avoid this" : "")));
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
                "the largest variance is no more than "
                    + (int) LEAST_RATIO
                    + " times the smallest, so small studies can hardly be told from large ones"
                    + " (Ioannidis and Trikalinos, CMAJ 2007;176:1091); do not read these tests"));
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
                "I squared is "
                    + Math.round(100 * iSquared)
                    + " %: with such differences between studies an uneven funnel says little of"
                    + " missing results (Ioannidis and Trikalinos, CMAJ 2007;176:1091)"
                    + (filled
                        ? ", and trim and fill may imagine studies where none are missing (Terrin et"
                            + " al., Stat Med 2003;22:2113; Peters et al., Stat Med 2007;26:4544)"
                        : "")));
  }
}
