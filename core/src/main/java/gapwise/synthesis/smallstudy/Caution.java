package gapwise.synthesis.smallstudy;

import gapwise.problem.Problem;

/** What speaks against a test for small-study effects that was made. */
public sealed interface Caution {
  /** Its code and what it says in words. */
  Problem problem();

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
          "trim and fill of "
              + studies
              + " studies: with fewer than "
              + SmallStudyData.FEWEST
              + " chance alone makes a funnel uneven, so do not read the imagined studies as"
              + " missing ones");
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
          "the standard error of this measure is worked out from the same numbers as the effect,"
              + " so effects and errors hang together even without small-study effects and"
              + " tests by regression and rank find too many (Schwarzer et al., Stat Med"
              + " 2002;21:2465; for proportions Hunter et al., J Clin Epidemiol 2014;67:897; for"
              + " standardised means Zwetsloot et al., eLife 2017;6:e24260)"
              + (counted ? "; 'peters' and 'harbord' avoid this" : ""));
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
          "the largest variance is no more than "
              + LEAST_RATIO
              + " times the smallest, so small studies can hardly be told from large ones"
              + " (Ioannidis and Trikalinos, CMAJ 2007;176:1091); do not read these tests");
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
          "I squared is "
              + iSquaredPercent
              + " %: with such differences between studies an uneven funnel says little of"
              + " missing results (Ioannidis and Trikalinos, CMAJ 2007;176:1091)"
              + (filled
                  ? ", and trim and fill may imagine studies where none are missing (Terrin et"
                      + " al., Stat Med 2003;22:2113; Peters et al., Stat Med 2007;26:4544)"
                  : ""));
    }
  }
}
