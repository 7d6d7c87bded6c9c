package gapwise.decision.weighing;

import gapwise.numeric.RandomValues;
import gapwise.problem.Problem;
import java.util.HashSet;
import java.util.List;

/**
 * What comes of weighing alternatives by several criteria while outcomes and weights are both
 * uncertain (Lahdelma and Salminen, Oper Res 2001;49:444): how often each alternative comes first,
 * and under which wishes. The worth of an alternative is the sum over criteria of weight times
 * value. There is no single score, since it would hide that people weigh differently.
 */
public sealed interface Weighing permits Weighed, Weighing.Refused {
  /** Fewer weighings tell shares too roughly; our choice. */
  int FEWEST = 1_000;

  /** More take long and tell nothing further; our choice. */
  int MOST = 1_000_000;

  /**
   * Wishes that no weights can keep.
   *
   * @param problems which of them contradict each other, and what to change; at least one
   */
  record Refused(List<Problem> problems) implements Weighing {
    public Refused {
      problems = List.copyOf(problems);
      if (problems.isEmpty()) {
        throw new IllegalArgumentException("a refusal needs a reason");
      }
    }
  }

  /**
   * Which wishes contradict each other, without weighing anything.
   *
   * @return what stands against them; none where some weights keep to all of them
   */
  static List<Problem> contradictions(List<Criterion> criteria, Wishes wishes) {
    return new WishCheck(criteria, wishes).problems();
  }

  /**
   * Weighs alternatives.
   *
   * @param alternatives two or more, in the order of the draws
   * @param criteria one or more, in the order of the draws
   * @param draws what may come of each alternative on each criterion
   * @param wishes what is said of the weights
   * @param seed the same seed gives the same result
   * @param n how often to weigh, {@link #FEWEST} to {@link #MOST}
   * @return shares, or which wishes contradict each other
   * @throws IllegalArgumentException if there is nothing to weigh, a code stands twice, or n is out
   *     of its range
   */
  static Weighing of(
      List<Alternative> alternatives,
      List<Criterion> criteria,
      Draws draws,
      Wishes wishes,
      long seed,
      int n) {
    if (alternatives.size() < 2 || criteria.isEmpty()) {
      throw new IllegalArgumentException(
          "weighing needs two alternatives and a criterion, were "
              + alternatives.size()
              + " and "
              + criteria.size());
    }
    if (new HashSet<>(alternatives.stream().map(Alternative::code).toList()).size()
            < alternatives.size()
        || new HashSet<>(criteria.stream().map(Criterion::code).toList()).size()
            < criteria.size()) {
      throw new IllegalArgumentException("a code stands twice");
    }
    if (n < FEWEST || n > MOST) {
      throw new IllegalArgumentException(
          "weighings must be " + FEWEST + " to " + MOST + ", were " + n);
    }
    List<Problem> problems = contradictions(criteria, wishes);
    if (!problems.isEmpty()) {
      return new Refused(problems);
    }
    WeightSampler sampler =
        new WeightSampler(WeightBounds.of(criteria, wishes), RandomValues.ofSeed(seed));
    Scale scale = new Scale(criteria, draws, alternatives.size());
    Tally tally = Tally.of(scale, sampler, n);
    return new Weighed(
        alternatives,
        criteria,
        wishes,
        n,
        Math.min(n, draws.different()),
        sampler.walks(),
        tally.standings(alternatives, scale),
        scale.cuts(n));
  }
}
