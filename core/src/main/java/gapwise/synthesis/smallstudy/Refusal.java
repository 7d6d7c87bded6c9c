package gapwise.synthesis.smallstudy;

import gapwise.problem.Problem;
import java.util.Objects;

/** Why a test for small-study effects is not made. */
public sealed interface Refusal {
  /** Its code and its reason in words. */
  Problem problem();

  /**
   * Effect and standard error move together by themselves, since events are too rare or too common.
   *
   * @param atBound studies with a group that has no event, or only events
   * @param studies all studies
   * @param counted whether the counts of two groups are known, which other tests use
   */
  record TooRare(int atBound, int studies, boolean counted) implements Refusal {
    @Override
    public Problem problem() {
      return new Problem(
          "",
          "events-too-rare-for-small-study-test",
          "in "
              + atBound
              + " of "
              + studies
              + " studies a group has no event, or only events; effect and standard error then"
              + " move together by themselves and the test finds asymmetry where there is none"
              + " (Schwarzer et al., Stat Med 2002;21:2465)"
              + (counted ? "; 'peters' and 'harbord' use the counts" : ""));
    }
  }

  /** The test takes counts of two groups. */
  record NotForMeasure() implements Refusal {
    @Override
    public Problem problem() {
      return new Problem(
          "",
          "small-study-test-not-for-measure",
          "the test is made for odds ratios of two groups with their counts");
    }
  }

  /** There is nothing to set small against large. */
  record AllAlike() implements Refusal {
    @Override
    public Problem problem() {
      return new Problem(
          "",
          "no-variation",
          "studies do not differ in size, or lie on one line to rounding, so that there is"
              + " nothing to test");
    }
  }

  /** Nothing can be computed from the effects at all. */
  record NotComputable(Problem problem) implements Refusal {
    public NotComputable {
      Objects.requireNonNull(problem, "problem");
    }
  }
}
