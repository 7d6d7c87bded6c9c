package gapwise.decision.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.decision.cost.Amount;
import gapwise.decision.cost.CostEntries;
import gapwise.decision.cost.CostParts;
import gapwise.decision.cost.Entry;
import gapwise.decision.cost.Health;
import gapwise.decision.option.Aspect;
import gapwise.problem.Problem;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** A table reckoned in costs; the numbers by hand of docs/methods/cost.md, with invented prices. */
class CostedTableTest {
  private static final Map<String, Amount> PRICES =
      Map.of(
          "bone-transport", Amount.known(20_000),
          "induced-membrane", Amount.known(15_000),
          "primary-amputation", Amount.known(9_000));

  private static Map<Entry, Amount> amounts() {
    Map<Entry, Amount> amounts = new EnumMap<>(Entry.class);
    double[] values = {40, 0, 0, 0, 1, 500, 8000, 2, 12_000, 3, 15_000, 10_000, 3, 100, 2000, 6};
    for (Entry entry : Entry.values()) {
      amounts.put(entry, Amount.known(values[entry.ordinal()]));
    }
    return amounts;
  }

  private static CostAsked asked(Map<String, Amount> prices, Map<Health, Double> utilities) {
    return asked(prices, utilities, Map.of());
  }

  private static CostAsked asked(
      Map<String, Amount> prices, Map<Health, Double> utilities, Map<String, Integer> stages) {
    return new CostAsked(
        new CostEntries("XTS", OptionalInt.of(2024), amounts(), prices, utilities),
        OptionalDouble.of(40_000),
        Optional.empty(),
        stages,
        Unknowns.LEAVE_OUT,
        1);
  }

  private static Tables tables() {
    return course(course(new Tables(Courses.NEEDED), "bone-transport", 14), "induced-membrane", 10);
  }

  private static Tables course(Tables tables, String method, double months) {
    return tables
        .with(method, Aspect.FULL_WEIGHT, months)
        .with(method, Aspect.UNION, 0.85)
        .with(method, Aspect.INFECTION, 0.2)
        .with(method, Aspect.LATER_AMPUTATION, 0.05)
        .with(method, Aspect.UNPLANNED_OPERATION, 0.3);
  }

  private static CostedMethods costed(Tables tables, CostAsked asked) {
    return assertInstanceOf(
        CostedMethods.class, CostedTable.of(tables.table(), asked, tables.posteriors()));
  }

  @Test
  void partsAndYearsAreThoseWorkedOutByHand() {
    CostedMethods methods = costed(tables(), asked(PRICES, Map.of()));
    CostParts parts = methods.costed().methods().get(0).parts();
    assertEquals(20_000, parts.treatment(), 1e-6);
    assertEquals(7000, parts.months(), 0.05);
    assertEquals(2400, parts.reoperations(), 0.05);
    assertEquals(2400, parts.infections(), 0.05);
    assertEquals(750, parts.amputations(), 0.05);
    assertEquals(4660, parts.notHealed(), 0.5);
    assertEquals(28_600, parts.lostWork(), 0.5);
    assertEquals(33.008, methods.effect(0).value(), 0.0005);
  }

  /** Shorter treatment and a lower price: cheaper and better in every draw, so no ratio. */
  @Test
  void theMethodThatIsCheaperAndBetterIsBestAtEveryAmount() {
    CostedMethods methods = costed(tables(), asked(PRICES, Map.of()));
    assertEquals(1, methods.costed().outcomes().increment(1, 0).cheaperBetter(), 1e-9);
    assertTrue(methods.costed().outcomes().increment(1, 0).ratio().isEmpty());
    assertTrue(methods.curve().stream().allMatch(at -> at.best() == 1 && at.frontier() == 1));
    assertTrue(methods.curve().stream().allMatch(at -> at.perfectInformation() == 0));
  }

  private static Tables withAmputation() {
    return tables()
        .with("primary-amputation", Aspect.FULL_WEIGHT, 6)
        .with("primary-amputation", Aspect.INFECTION, 0.1)
        .with("primary-amputation", Aspect.UNPLANNED_OPERATION, 0.4);
  }

  @Test
  void yearsHealedSayNothingOfAnAmputationSoItEntersNoCurve() {
    CostedMethods methods = costed(withAmputation(), asked(PRICES, Map.of()));
    assertEquals(3, methods.methods().size());
    assertTrue(methods.isSilent(2));
    assertEquals(List.of(0, 1), methods.compared());
    assertEquals(2, methods.curve().get(0).shares().size());
  }

  /** Every year is worth the same, nobody dies: 40 years each, whatever was done. */
  @Test
  void withUtilitiesAnAmputationIsCompared() {
    Map<Health, Double> utilities = new EnumMap<>(Health.class);
    for (Health health : Health.values()) {
      utilities.put(health, 1.0);
    }
    CostedMethods methods = costed(withAmputation(), asked(PRICES, utilities));
    assertFalse(methods.isSilent(2));
    assertEquals(40, methods.effect(0).value(), 1e-9);
    assertEquals(40, methods.effect(2).value(), 1e-9);
    assertEquals(3, methods.curve().get(0).shares().size());
  }

  @Test
  void whatIsNotKnownOrHasNoPriceIsLeftOutByName() {
    Tables tables = course(tables().with("autograft", Aspect.UNION, 0.5), "allograft", 12);
    CostedMethods methods = costed(tables, asked(PRICES, Map.of()));
    assertEquals(
        List.of("autograft", "allograft"),
        methods.leftOut().stream().map(named -> named.method().code()).toList());
    assertEquals(4, methods.leftOut().get(0).why().size());
    assertEquals(
        List.of("no cost of its planned operations is entered"), methods.leftOut().get(1).why());
  }

  @Test
  void stagesAreThoseEnteredElseOneAndTheTableSaysWhich() {
    CostedMethods methods = costed(Map.of("induced-membrane", 2));
    assertEquals(
        "Planned stages, one after another and of equal length: Bone transport 1 (no group here"
            + " tells), Induced membrane 2 (as entered).",
        CostFigures.stages(methods).replace('\u00a0', ' '));
  }

  /**
   * Stages of equal length last as long together as one stage does, so that with no discount and no
   * death what a month costs comes to the same; only when the months fall is another.
   */
  @Test
  void moreStagesMoveMonthsAndNotTheirNumber() {
    double one = months(costed(Map.of("induced-membrane", 1)));
    double three = months(costed(Map.of("induced-membrane", 3)));
    assertEquals(one, three, 1e-6 * one);
    // 10 months at 500 a month, worked out by hand.
    assertEquals(5000, three, 5);
  }

  private static double months(CostedMethods methods) {
    return methods.costed().methods().get(1).parts().months();
  }

  private static CostedMethods costed(Map<String, Integer> stages) {
    Tables tables = tables();
    Map<String, Amount> prices =
        Map.of("bone-transport", Amount.known(20_000), "induced-membrane", Amount.known(16_000));
    return (CostedMethods)
        CostedTable.of(tables.table(), asked(prices, Map.of(), stages), tables.posteriors());
  }

  @Test
  void everyEntryThatIsMissingIsNamedAndNothingIsReckoned() {
    CostAsked asked =
        new CostAsked(
            new CostEntries("", OptionalInt.empty(), Map.of(), Map.of(), Map.of()),
            OptionalDouble.empty(),
            Optional.empty(),
            Map.of(),
            Unknowns.RANGE,
            1);
    List<String> where = CostedTable.missing(asked).stream().map(Problem::where).toList();
    assertEquals(Entry.values().length + 4, where.size(), where.toString());
    assertTrue(where.containsAll(List.of("currency", "price-year", "worth-up-to", "treatment")));
    Tables tables = tables();
    assertInstanceOf(
        CostedTable.NotReckoned.class, CostedTable.of(tables.table(), asked, tables.posteriors()));
  }
}
