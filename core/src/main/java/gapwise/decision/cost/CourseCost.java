package gapwise.decision.cost;

import java.util.Objects;

/**
 * What the course of one cohort comes to.
 *
 * @param chain the cohort
 * @param trace its course
 * @param entries what things cost
 * @param treatment cost of the planned operations
 */
record CourseCost(CourseChain chain, Trace trace, CostEntries entries, double treatment) {
  private static final Counting COUNTING = Counting.TRAPEZOID;

  private Discount discount() {
    return new Discount(entries.mean(Entry.DISCOUNT_COSTS), CourseChain.MONTHS);
  }

  /** States and moves in money, by what it is for. */
  CostParts parts() {
    double inTreatment = 0;
    for (int state = 0; state <= chain.awaiting(); state++) {
      inTreatment += months(state);
    }
    double infections = 0;
    double operations = 0;
    double amputations = 0;
    Discount discount = discount();
    for (int cycle = 1; cycle <= trace.cycles(); cycle++) {
      double worth = discount.factor(cycle);
      infections += worth * trace.entered(cycle, chain.infected());
      operations += worth * operated(cycle);
      amputations += worth * trace.entered(cycle, chain.amputated());
    }
    boolean kept = chain.kind() == MethodCourse.Kind.RECONSTRUCTION;
    double late = kept ? amputations : 0;
    double lostMonths = inTreatment + late * entries.mean(Entry.MONTHS_OFF_WORK_AFTER_AMPUTATION);
    return new CostParts(
        treatment,
        inTreatment * entries.mean(Entry.MONTH_IN_TREATMENT),
        operations * entries.mean(Entry.REOPERATION),
        infections * entries.mean(Entry.INFECTION),
        late * entries.mean(Entry.AMPUTATION),
        prostheses() * entries.mean(Entry.PROSTHESIS),
        months(chain.notHealed()) * entries.mean(Entry.MONTH_NOT_HEALED),
        lostMonths * entries.mean(Entry.LOST_WORK_MONTH));
  }

  /** Those who have the operation that they awaited. */
  private double operated(int cycle) {
    return trace.moved(cycle, chain.awaiting(), chain.healed())
        + trace.moved(cycle, chain.awaiting(), chain.notHealed())
        + trace.moved(cycle, chain.awaiting(), chain.amputated());
  }

  private double months(int state) {
    return trace.total((time, in) -> in == state ? 1 : 0, discount(), COUNTING);
  }

  /**
   * Prostheses, discounted: one at the amputation, and one after every so many years to those who
   * live then. Nobody leaves the amputated but by death, so whoever came is followed by survival
   * alone. None is bought at the very end of the horizon.
   */
  private double prostheses() {
    int every =
        Math.max(1, (int) Math.round(CourseChain.MONTHS * entries.mean(Entry.PROSTHESIS_YEARS)));
    double[] alive = new double[trace.cycles() + 1];
    alive[0] = 1;
    for (int cycle = 1; cycle <= trace.cycles(); cycle++) {
      alive[cycle] = alive[cycle - 1] * (1 - chain.death(CourseChain.year(cycle)));
    }
    Discount discount = discount();
    double bought = 0;
    for (int cycle = 1; cycle <= trace.cycles(); cycle++) {
      double came = trace.entered(cycle, chain.amputated());
      for (int time = cycle; came > 0 && time < trace.cycles(); time += every) {
        bought += came * discount.factor(time) * alive[time] / alive[cycle];
      }
    }
    return bought;
  }

  /** Years healed, or years weighed by their quality, discounted. */
  double effect() {
    Discount discount = new Discount(entries.mean(Entry.DISCOUNT_EFFECTS), CourseChain.MONTHS);
    double[] worth = new double[trace.states().size()];
    if (entries.hasUtilities()) {
      for (int state = 0; state < chain.dead(); state++) {
        worth[state] = Objects.requireNonNull(entries.utilities().get(health(state)));
      }
    } else {
      worth[chain.healed()] = 1;
    }
    return trace.total((time, state) -> worth[state], discount, COUNTING) / CourseChain.MONTHS;
  }

  private Health health(int state) {
    if (state == chain.infected()) {
      return Health.INFECTED;
    }
    if (state <= chain.awaiting()) {
      return Health.IN_TREATMENT;
    }
    return state == chain.healed()
        ? Health.HEALED
        : state == chain.notHealed() ? Health.NOT_HEALED : Health.AMPUTATED;
  }
}
