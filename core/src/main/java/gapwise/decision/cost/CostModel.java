package gapwise.decision.cost;

import gapwise.budget.Work;
import gapwise.numeric.RandomValues;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;

/**
 * What methods cost and bring over years, by a cohort of patients for each that moves between
 * states every month; docs/methods/cost.md is its whole description.
 */
public sealed interface CostModel permits Costed, CostModel.Incomplete {
  /** More draws take long and tell nothing further; our choice. */
  int MOST_DRAWS = 20_000;

  /** What an effect is counted in. */
  enum Effect {
    /** Years, each weighed by the utility of its state. */
    QUALITY_ADJUSTED_YEARS,
    /** Years alive and healed on the own leg; a year with a prosthesis counts nothing. */
    YEARS_HEALED
  }

  /**
   * Entries that are missing or cannot be.
   *
   * @param problems each of them, by the code of the entry; at least one
   */
  record Incomplete(List<Problem> problems) implements CostModel {
    public Incomplete {
      problems = List.copyOf(problems);
      if (problems.isEmpty()) {
        throw new IllegalArgumentException("what is incomplete misses something");
      }
    }
  }

  /**
   * What is missing of entries, or cannot be, whatever methods are reckoned.
   *
   * @return each of them, by the code of the entry; none where nothing is
   */
  static List<Problem> missing(CostEntries entries) {
    return new EntryCheck(entries, List.of()).problems();
  }

  /**
   * Reckons costs and effects.
   *
   * @param entries what somebody entered
   * @param methods two or more, of as many draws each
   * @param seed of the draws of money, which are the same for all methods
   * @return costs and effects, or what is missing of the entries
   * @throws IllegalArgumentException if methods are fewer than two, alike in code or differ in
   *     their number of draws, or draws are more than {@link #MOST_DRAWS}
   */
  static CostModel of(CostEntries entries, List<MethodCourse> methods, long seed) {
    int draws = methods.isEmpty() ? 0 : methods.get(0).draws().count();
    if (methods.size() < 2
        || draws > MOST_DRAWS
        || methods.stream().anyMatch(method -> method.draws().count() != draws)
        || new HashSet<>(methods.stream().map(MethodCourse::code).toList()).size()
            < methods.size()) {
      throw new IllegalArgumentException(
          "needs two methods or more with codes of their own and as many draws each, at most "
              + MOST_DRAWS);
    }
    List<Problem> problems = new EntryCheck(entries, methods).problems();
    if (!problems.isEmpty()) {
      return new Incomplete(problems);
    }
    List<CostEntries> money = new ArrayList<>();
    RandomValues random = RandomValues.ofSeed(seed);
    for (int draw = 0; draw < draws; draw++) {
      money.add(entries.drawn(random));
    }
    List<MethodCost> costs = new ArrayList<>();
    double[][] cost = new double[methods.size()][draws];
    double[][] effect = new double[methods.size()][draws];
    for (int m = 0; m < methods.size(); m++) {
      costs.add(reckon(methods.get(m), entries, money, cost[m], effect[m]));
    }
    return new Costed(
        entries,
        entries.hasUtilities() ? Effect.QUALITY_ADJUSTED_YEARS : Effect.YEARS_HEALED,
        costs,
        CostsAndEffects.of(methods.stream().map(MethodCourse::code).toList(), cost, effect));
  }

  private static MethodCost reckon(
      MethodCourse method,
      CostEntries entries,
      List<CostEntries> money,
      double[] cost,
      double[] effect) {
    int draws = money.size();
    CostParts parts = CostParts.NONE;
    double effects = 0;
    int scaled = 0;
    int lengthened = 0;
    for (int draw = 0; draw < draws; draw++) {
      Work.check();
      CostEntries prices = money.get(draw);
      CourseChain chain = chain(method, method.draws().at(draw), prices);
      double treatment =
          Objects.requireNonNull(prices.treatments().get(method.code()), method.code()).mean();
      CourseCost reckoned = new CourseCost(chain, chain.run(), prices, treatment);
      CostParts drawn = reckoned.parts();
      parts = parts.plus(drawn, 1.0 / draws);
      cost[draw] = drawn.total();
      effect[draw] = reckoned.effect();
      effects += effect[draw] / draws;
      scaled += chain.isScaled() ? 1 : 0;
      lengthened += chain.isLengthened() ? 1 : 0;
    }
    Trace course = chain(method, method.draws().means(), entries).run();
    return new MethodCost(method, parts, effects, course, scaled, lengthened);
  }

  private static CourseChain chain(MethodCourse method, CourseInputs inputs, CostEntries entries) {
    return new CourseChain(method.stages(), inputs, entries, method.kind());
  }
}
