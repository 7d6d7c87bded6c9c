package gapwise.decision;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.decision.cost.Amount;
import gapwise.decision.cost.CostEntries;
import gapwise.decision.cost.CostModel;
import gapwise.decision.cost.CostParts;
import gapwise.decision.cost.Costed;
import gapwise.decision.cost.CourseDraws;
import gapwise.decision.cost.Entry;
import gapwise.decision.cost.MethodCourse;
import gapwise.decision.weighing.Alternative;
import gapwise.decision.weighing.Criterion;
import gapwise.decision.weighing.Difference;
import gapwise.decision.weighing.OneShare;
import gapwise.decision.weighing.Outcomes;
import gapwise.decision.weighing.PersonsWhoGain;
import gapwise.decision.weighing.Weighed;
import gapwise.decision.weighing.Weighing;
import gapwise.decision.weighing.Wishes;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The worked examples on the pages docs/methods/weighing.md and cost.md: each line of the table
 * headed {@code worked out | value} holds to the last digit printed.
 */
class DecisionPagesTest {
  private static final Path PAGES = Path.of("..", "docs", "methods");

  private static void holds(String page, Map<String, Double> worked) throws IOException {
    Map<String, String> printed = new LinkedHashMap<>();
    boolean inside = false;
    for (String line : Files.readAllLines(PAGES.resolve(page))) {
      inside = line.startsWith("| worked out |") || (inside && line.startsWith("|"));
      if (inside && !line.startsWith("| worked out |") && !line.startsWith("| -")) {
        String[] cells = line.split("\\|");
        printed.put(cells[1].strip(), cells[2].strip());
      }
    }
    assertEquals(worked.keySet(), printed.keySet());
    printed.forEach(
        (name, value) ->
            assertEquals(
                Double.parseDouble(value),
                worked.get(name),
                new BigDecimal(value).ulp().doubleValue() / 2,
                name));
  }

  private static Weighed weighed(Wishes wishes) {
    double[][] outcomes = {{1, 0}, {0, 1}, {.6, .6}};
    return (Weighed)
        Weighing.of(
            Stream.of("A", "B", "C").map(name -> new Alternative(name, name)).toList(),
            List.of(new Criterion("1", "First", 0, 1), new Criterion("2", "Second", 0, 1)),
            Outcomes.of(
                Stream.of(outcomes)
                    .map(row -> List.of(new double[] {row[0]}, new double[] {row[1]}))
                    .toList()),
            wishes,
            1,
            100_000);
  }

  @Test
  void weighing() throws IOException {
    Weighed free = weighed(Wishes.none());
    Weighed ordered = weighed(Wishes.none().inOrder(List.of("1", "2")));
    Difference.Summary twelve = Difference.Summary.ofLimits(12, -2, 26);
    OneShare nine = new OneShare(9, 9);
    Map<String, Double> worked = new LinkedHashMap<>();
    worked.put("A first", free.standings().get(0).first());
    worked.put("C first", free.standings().get(2).first());
    worked.put("C second", free.standings().get(2).ranks().get(1));
    worked.put(
        "central weight of A on the first criterion",
        free.standings().get(0).favour().orElseThrow().weights().get(0));
    worked.put("A first, the first criterion more important", ordered.standings().get(0).first());
    worked.put("chance that 12 (-2 to 26) is above 10", twelve.above(10));
    worked.put(
        "the same by Student's t with 6 degrees of freedom",
        twelve.withDegreesOfFreedom(6).above(10));
    worked.put("chance that nine of nine is above 0.8", nine.above(0.8));
    worked.put(
        "chance that nine of nine is above seven of nine", nine.above(new OneShare(7, 9), 0));
    worked.put("persons who gain, mean 8, MID 9, SD 15", new PersonsWhoGain(9, 15).share(8));
    holds("weighing.md", worked);
  }

  private static Costed costed(double years, double rate, double untilWalking) {
    Map<Entry, Amount> prices = new EnumMap<>(Entry.class);
    for (Entry entry : Entry.values()) {
      prices.put(entry, Amount.known(entry.least()));
    }
    prices.put(Entry.HORIZON_YEARS, Amount.known(years));
    prices.put(Entry.DISCOUNT_COSTS, Amount.known(rate));
    prices.put(Entry.MONTH_IN_TREATMENT, Amount.known(500));
    prices.put(Entry.REOPERATION, Amount.known(8_000));
    prices.put(Entry.INFECTION, Amount.known(12_000));
    prices.put(Entry.AMPUTATION, Amount.known(15_000));
    prices.put(Entry.PROSTHESIS, Amount.known(10_000));
    prices.put(Entry.PROSTHESIS_YEARS, Amount.known(3));
    prices.put(Entry.MONTH_NOT_HEALED, Amount.known(100));
    prices.put(Entry.LOST_WORK_MONTH, Amount.known(2_000));
    prices.put(Entry.MONTHS_OFF_WORK_AFTER_AMPUTATION, Amount.known(6));
    CourseDraws course = one(14, .85, .2, .05, .3);
    return (Costed)
        CostModel.of(
            new CostEntries(
                "EUR",
                OptionalInt.of(2024),
                prices,
                Map.of("r", Amount.known(20_000), "a", Amount.known(0)),
                Map.of()),
            List.of(
                new MethodCourse("r", "R", MethodCourse.Kind.RECONSTRUCTION, 2, 24, course),
                new MethodCourse(
                    "a", "A", MethodCourse.Kind.AMPUTATION, 1, 24, one(untilWalking, 0, 0, 0, 0))),
            1);
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

  @Test
  void cost() throws IOException {
    Costed plain = costed(40, 0, 6);
    CostParts parts = plain.methods().get(0).parts();
    Map<String, Double> worked = new LinkedHashMap<>();
    worked.put("months in treatment", parts.months());
    worked.put("operations", parts.reoperations());
    worked.put("infections", parts.infections());
    worked.put("amputations", parts.amputations());
    worked.put("months not healed", parts.notHealed());
    worked.put("lost work", parts.lostWork());
    worked.put("years healed", plain.methods().get(0).effect());
    worked.put("prostheses of 30 years", costed(30, .03, .5).methods().get(1).parts().prostheses());
    holds("cost.md", worked);
  }
}
