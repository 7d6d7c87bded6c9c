package gapwise.decision.cost;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.problem.Problem;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** The model of reconstruction in cases whose sums can be worked out by hand; invented prices. */
class CostModelTest {
  private static Map<Entry, Amount> prices() {
    Map<Entry, Amount> prices = new EnumMap<>(Entry.class);
    prices.put(Entry.HORIZON_YEARS, Amount.known(40));
    prices.put(Entry.DISCOUNT_COSTS, Amount.known(0));
    prices.put(Entry.DISCOUNT_EFFECTS, Amount.known(0));
    prices.put(Entry.DEATH_FIRST_YEAR, Amount.known(0));
    prices.put(Entry.DEATH_GROWTH, Amount.known(1));
    prices.put(Entry.MONTH_IN_TREATMENT, Amount.known(500));
    prices.put(Entry.REOPERATION, Amount.known(8_000));
    prices.put(Entry.MONTHS_AWAITING, Amount.known(2));
    prices.put(Entry.INFECTION, Amount.known(12_000));
    prices.put(Entry.MONTHS_INFECTED, Amount.known(3));
    prices.put(Entry.AMPUTATION, Amount.known(15_000));
    prices.put(Entry.PROSTHESIS, Amount.known(10_000));
    prices.put(Entry.PROSTHESIS_YEARS, Amount.known(3));
    prices.put(Entry.MONTH_NOT_HEALED, Amount.known(100));
    prices.put(Entry.LOST_WORK_MONTH, Amount.known(2_000));
    prices.put(Entry.MONTHS_OFF_WORK_AFTER_AMPUTATION, Amount.known(6));
    return prices;
  }

  private static final Map<Health, Double> UTILITIES =
      Map.of(
          Health.IN_TREATMENT, .5,
          Health.INFECTED, .4,
          Health.HEALED, .8,
          Health.NOT_HEALED, .45,
          Health.AMPUTATED, .65);

  private static CostEntries entries(Map<Entry, Amount> prices, Map<Health, Double> utilities) {
    return new CostEntries(
        "EUR",
        OptionalInt.of(2024),
        prices,
        Map.of("r", Amount.known(20_000), "a", Amount.known(9_000)),
        utilities);
  }

  private static CourseDraws one(
      double months, double joined, double infected, double lost, double again) {
    return CourseDraws.of(
        new double[] {months},
        new double[] {joined},
        new double[] {infected},
        new double[] {lost},
        new double[] {again});
  }

  private static MethodCourse reconstruction(int stages, CourseDraws draws) {
    return new MethodCourse(
        "r", "Reconstruction", MethodCourse.Kind.RECONSTRUCTION, stages, 24, draws);
  }

  private static MethodCourse amputation(CourseDraws draws) {
    return new MethodCourse("a", "Amputation", MethodCourse.Kind.AMPUTATION, 1, 24, draws);
  }

  private static final CourseDraws USUAL = one(14, .85, .2, .05, .3);
  private static final CourseDraws WALKS = one(6, 0, .1, 0, .15);

  private static Costed costed(CostEntries entries, int stages) {
    return (Costed)
        CostModel.of(entries, List.of(reconstruction(stages, USUAL), amputation(WALKS)), 1);
  }

  /** Nobody dies, nothing is discounted, forty years are as good as for ever for a treatment. */
  @Test
  void everyPartIsWhatItCostsTimesHowOftenItComes() {
    for (int stages = 1; stages <= 3; stages++) {
      Costed costed = costed(entries(prices(), Map.of()), stages);
      CostParts parts = costed.methods().get(0).parts();
      assertEquals(20_000, parts.treatment(), 1e-9);
      assertEquals(14 * 500, parts.months(), 1e-3);
      assertEquals(.3 * 8_000, parts.reoperations(), 1e-6);
      assertEquals(.2 * 12_000, parts.infections(), 1e-6);
      assertEquals(.05 * 15_000, parts.amputations(), 1e-6);
      assertEquals((14 + .05 * 6) * 2_000, parts.lostWork(), 1e-2);
      // A tenth is not healed, from month 14 on average to month 480.
      assertEquals(.1 * (480 - 14) * 100, parts.notHealed(), 1e-2);
      assertEquals(parts.total(), costed.outcomes().cost(0, 0), 1e-6);
      assertEquals(.85 * (480 - 14) / 12, costed.methods().get(0).effect(), 1e-4);
      CostParts lost = costed.methods().get(1).parts();
      assertEquals(9_000, lost.treatment());
      assertEquals(0, lost.amputations());
      assertEquals(6 * 2_000, lost.lostWork(), 1e-3);
      assertEquals(0, costed.methods().get(1).effect());
    }
  }

  @Test
  void yearsAreWeighedByUtilitiesWhereTheyAreEntered() {
    Costed costed = costed(entries(prices(), UTILITIES), 2);
    assertEquals(CostModel.Effect.QUALITY_ADJUSTED_YEARS, costed.effect());
    // Months by hand: 14 in treatment, 0.6 of them infected; then .85 healed, .05 lost, .1 not.
    double months = 13.4 * .5 + .6 * .4 + 466 * (.85 * .8 + .05 * .65 + .1 * .45);
    assertEquals(months / 12, costed.methods().get(0).effect(), 1e-4);
    assertEquals(List.of(), costed.cautions());
  }

  /**
   * A leg lost in the first month and a prosthesis every three years, thirty years at 3 %: the
   * series 69,293.511516 of years 0, 3 .. 27 (by hand), a month later.
   */
  @Test
  void prosthesesAreRenewedForAsLongAsTheHorizonGoes() {
    Map<Entry, Amount> prices = prices();
    prices.put(Entry.HORIZON_YEARS, Amount.known(30));
    prices.put(Entry.DISCOUNT_COSTS, Amount.known(.03));
    List<MethodCourse> methods = List.of(reconstruction(1, USUAL), amputation(one(.5, 0, 0, 0, 0)));
    Costed costed = (Costed) CostModel.of(entries(prices, UTILITIES), methods, 1);
    assertEquals(
        69_293.511516 * Math.pow(1.03, -1 / 12.0),
        costed.methods().get(1).parts().prostheses(),
        1e-5);
    // With a tenth dying each year only those who live get another one.
    prices.put(Entry.DEATH_FIRST_YEAR, Amount.known(.1));
    Costed dying = (Costed) CostModel.of(entries(prices, UTILITIES), methods, 1);
    double expected = 0;
    for (int month = 1; month < 360; month += 36) {
      expected += 10_000 * Math.pow(.9 / 1.03, month / 12.0);
    }
    assertEquals(expected, dying.methods().get(1).parts().prostheses(), 1e-5);
  }

  @Test
  void sharesAddUpToOneAndTheDeadStayDead() {
    Map<Entry, Amount> prices = prices();
    prices.put(Entry.DEATH_FIRST_YEAR, Amount.known(.02));
    prices.put(Entry.DEATH_GROWTH, Amount.known(1.1));
    Trace course = costed(entries(prices, UTILITIES), 3).methods().get(0).course();
    int dead = course.states().indexOf("dead");
    double alive = 1;
    for (int month = 1; month <= 480; month++) {
      double sum = 0;
      for (int state = 0; state <= dead; state++) {
        sum += course.share(month, state);
      }
      assertEquals(1, sum, 1e-9);
      // Everybody dies alike: (1 - .02 x 1.1^(year - 1)) a year, its twelfth root a month.
      double ofYear = Math.min(1, .02 * Math.pow(1.1, (month - 1) / 12));
      alive *= Math.pow(1 - ofYear, 1 / 12.0);
      assertEquals(1 - alive, course.share(month, dead), 1e-9);
    }
  }

  @Test
  void missingEntriesAreNamedOneByOne() {
    Map<Entry, Amount> prices = prices();
    prices.remove(Entry.INFECTION);
    prices.put(Entry.DISCOUNT_COSTS, Amount.known(3));
    prices.put(Entry.MONTHS_AWAITING, new Amount(2, 1));
    CostEntries entries =
        new CostEntries(
            "",
            OptionalInt.empty(),
            prices,
            Map.of("r", Amount.known(1)),
            Map.of(Health.HEALED, 1.5));
    List<Problem> problems =
        ((CostModel.Incomplete)
                CostModel.of(entries, List.of(reconstruction(1, USUAL), amputation(WALKS)), 1))
            .problems();
    List<String> found = problems.stream().map(p -> p.where() + " " + p.code()).toList();
    assertEquals(
        List.of(
            "currency missing-entry",
            "price-year missing-entry",
            "discount-costs entry-out-of-range",
            "months-awaiting deviation-of-a-known-number",
            "infection missing-entry",
            "treatment a missing-entry",
            "utility healed entry-out-of-range",
            "utility in-treatment missing-entry",
            "utility infected missing-entry",
            "utility not-healed missing-entry",
            "utility amputated missing-entry"),
        found);
    assertTrue(problems.get(5).message().contains("planned operations of Amputation"));
  }

  @Test
  void whatWasBentIsCountedAndTold() {
    CourseDraws bent =
        CourseDraws.of(
            new double[] {14, 1},
            new double[] {.9, .5},
            new double[] {0, .9},
            new double[] {.3, .1},
            new double[] {0, .9});
    MethodCourse short24 =
        new MethodCourse("r", "Short", MethodCourse.Kind.RECONSTRUCTION, 1, 6, bent);
    CourseDraws walks =
        CourseDraws.of(
            new double[] {6, 6}, new double[2], new double[2], new double[2], new double[2]);
    Costed costed =
        (Costed) CostModel.of(entries(prices(), Map.of()), List.of(short24, amputation(walks)), 1);
    assertEquals(1, costed.methods().get(0).scaled());
    assertEquals(1, costed.methods().get(0).lengthened());
    assertEquals(
        List.of(
            "seen-shorter-than-treatment",
            "shares-scaled",
            "months-lengthened",
            "amputation-without-utilities"),
        costed.cautions().stream().map(Problem::code).toList());
    // Scaled to all: three quarters heal, and nobody is left who is not healed.
    assertEquals(.75 * (480 - 14) / 12, costed.outcomes().effect(0, 0), 1e-4);
  }

  @Test
  void moneyIsDrawnOnceForAllMethods() {
    Map<Entry, Amount> prices = prices();
    prices.put(Entry.PROSTHESIS, new Amount(10_000, 4_000));
    int n = 400;
    CourseDraws same = many(n, 6);
    List<MethodCourse> methods =
        List.of(
            new MethodCourse("r", "R", MethodCourse.Kind.AMPUTATION, 1, 24, same),
            amputation(same));
    Costed costed = (Costed) CostModel.of(entries(prices, UTILITIES), methods, 2);
    double first = costed.outcomes().cost(0, 0) - costed.outcomes().cost(1, 0);
    for (int i = 0; i < n; i++) {
      double apart = costed.outcomes().cost(0, i) - costed.outcomes().cost(1, i);
      assertEquals(first, apart, 1e-6, "only the treatment differs");
    }
    assertTrue(
        Math.abs(costed.outcomes().cost(0, 0) - costed.outcomes().cost(0, 1)) > 1,
        "prostheses cost something else in every draw");
    assertEquals(
        costed.outcomes().meanCost(0),
        ((Costed) CostModel.of(entries(prices, UTILITIES), methods, 2)).outcomes().meanCost(0));
  }

  private static CourseDraws many(int n, double months) {
    double[] all = new double[n];
    Arrays.fill(all, months);
    return CourseDraws.of(all, new double[n], new double[n], new double[n], new double[n]);
  }

  @Test
  void whatIsNoComparisonIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> CostModel.of(entries(prices(), UTILITIES), List.of(amputation(WALKS)), 1));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            CostModel.of(
                entries(prices(), UTILITIES),
                List.of(amputation(WALKS), reconstruction(1, many(3, 6))),
                1));
    assertThrows(IllegalArgumentException.class, () -> one(0, .5, 0, 0, 0));
    assertThrows(IllegalArgumentException.class, () -> one(6, 1.5, 0, 0, 0));
  }
}
