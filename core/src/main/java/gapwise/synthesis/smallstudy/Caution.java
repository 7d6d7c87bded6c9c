package gapwise.synthesis.smallstudy;

import static gapwise.sentence.Sentences.say;

import gapwise.problem.Problem;
import java.util.Map;

/** What speaks against a test for small-study effects that was made. */
public sealed interface Caution {
  /** Its code and what it says in words. */
  Problem problem();

  /**
   * A test of asymmetry in fewer studies than {@link SmallStudyData#FEWEST}: it could not tell
   * chance from asymmetry (Sterne et al., BMJ 2011;343:d4002).
   *
   * @param studies how many
   */
  record FewTested(int studies) implements Caution {
    @Override
    public Problem problem() {
      return new Problem(
          "",
          "too-few-for-small-study-test",
          say(
              "analysis.too-few-to-test",
              Map.of("studies", studies, "fewest", SmallStudyData.FEWEST)));
    }
  }

  /**
   * Trim and fill of fewer studies than {@link SmallStudyData#FEWEST}.
   *
   * @param studies how many
   */
  record FewFilled(int studies) implements Caution {
    @Override
    public Problem problem() {
      return new Problem(
          "",
          "too-few-for-small-study-test",
          say(
              "analysis.too-few-to-fill",
              Map.of("studies", studies, "fewest", SmallStudyData.FEWEST)));
    }
  }

  /**
   * The standard error is worked out from the same numbers as the effect.
   *
   * @param counted whether the counts of two groups are known, which other tests use
   */
  record ErrorFollowsEffect(boolean counted) implements Caution {
    @Override
    public Problem problem() {
      return new Problem(
          "",
          "standard-error-follows-effect",
          say(
              counted
                  ? "analysis.error-follows-effect-unlike-counts"
                  : "analysis.error-follows-effect"));
    }
  }

  /** Studies that are too much of one size. */
  record SimilarSize() implements Caution {
    /**
     * Ratio of the largest to the smallest variance below which studies are too much of one size:
     * Ioannidis and Trikalinos, CMAJ 2007;176:1091.
     */
    public static final int LEAST_RATIO = 4;

    @Override
    public Problem problem() {
      return new Problem(
          "",
          "studies-of-similar-size",
          say("analysis.of-similar-size", Map.of("ratio", LEAST_RATIO)));
    }
  }

  /**
   * Studies that differ much beyond chance.
   *
   * @param iSquaredPercent I squared in whole percent
   * @param filled whether studies were imagined
   */
  record Heterogeneous(long iSquaredPercent, boolean filled) implements Caution {
    @Override
    public Problem problem() {
      return new Problem(
          "",
          "small-study-test-with-heterogeneity",
          say(
              filled
                  ? "analysis.funnel-of-unlike-studies-filled"
                  : "analysis.funnel-of-unlike-studies",
              Map.of("percent", iSquaredPercent)));
    }
  }
}
