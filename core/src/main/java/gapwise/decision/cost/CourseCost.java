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
    double[] months = trace.spent(discount(), COUNTING);
    for (int state = 0; state <= chain.awaiting(); state++) {
      inTreatment += months[state];
    }
    double infections = 0;
    double operations = 0;
    double amputations = 0;
    double[] factors = discount().factors(trace.cycles());
    for (int cycle = 1; cycle <= trace.cycles(); cycle++) {
      double worth = factors[cycle];
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
        prostheses(factors) * entries.mean(Entry.PROSTHESIS),
        months[chain.notHealed()] * entries.mean(Entry.MONTH_NOT_HEALED),
        lostMonths * entries.mean(Entry.LOST_WORK_MONTH));
  }

  /** Those who have the operation that they awaited. */
  private double operated(int cycle) {
    return trace.moved(cycle, chain.awaiting(), chain.healed())
        + trace.moved(cycle, chain.awaiting(), chain.notHealed())
        + trace.moved(cycle, chain.awaiting(), chain.amputated());
  }

  /**
   * Prostheses, discounted: one at the amputation, and one after every so many years to those who
   * live then. Nobody leaves the amputated but by death, so whoever came is followed by survival
   * alone. None is bought at the very end of the horizon.
   */
  private double prostheses(double[] factors) {
    int every =
        Math.max(1, (int) Math.round(CourseChain.MONTHS * entries.mean(Entry.PROSTHESIS_YEARS)));
    double[] alive = new double[trace.cycles() + 1];
    alive[0] = 1;
    double death = 0;
    for (int cycle = 1; cycle <= trace.cycles(); cycle++) {
      if (cycle % CourseChain.MONTHS == 1) {
        death = chain.death(CourseChain.year(cycle));
      }
      alive[cycle] = alive[cycle - 1] * (1 - death);
    }
    double bought = 0;
    for (int cycle = 1; cycle <= trace.cycles(); cycle++) {
      double came = trace.entered(cycle, chain.amputated());
      for (int time = cycle; came > 0 && time < trace.cycles(); time += every) {
        bought += came * factors[time] * alive[time] / alive[cycle];
      }
    }
    return bought;
  }

  /** Years healed, or years weighed by their quality, discounted. */
  double effect() {
    Discount discount = new Discount(entries.mean(Entry.DISCOUNT_EFFECTS), CourseChain.MONTHS);
    double[] months = trace.spent(discount, COUNTING);
    if (!entries.hasUtilities()) {
      return months[chain.healed()] / CourseChain.MONTHS;
    }
    double sum = 0;
    for (int state = 0; state < chain.dead(); state++) {
      double worth = Objects.requireNonNull(entries.utilities().get(health(state)));
      sum += worth * months[state];
    }
    return sum / CourseChain.MONTHS;
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
