package gapwise.analysis.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.testing.Plans;
import gapwise.budget.Budget;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each limit of docs/plan.md is held, at its place and before anything is made from it. */
class PlanLimitsTest {
  private static final String COUNTS = rows(12, "'events':1,'total':4");
  private static final String EFFECTS =
      "'measure':'reported-effect','source':{'rows':"
          + rows(12, "'effect':#,'standardError':1,'x':#,'y':1#,'c':'k#'")
          + "}";

  /**
   * A plan over one limit.
   *
   * @param plan with ' for "
   * @param most what is allowed
   * @param expected place and code of the only problem
   * @param found the number in its message
   */
  record Over(Limit limit, long most, String plan, String expected, String found) {
    @Override
    public String toString() {
      return limit + ": " + expected;
    }
  }

  /** Rows in which # stands for the number of each. */
  private static String rows(int count, String cells) {
    return IntStream.range(0, count)
        .mapToObj(i -> "{" + cells.replace("#", "" + i) + "}")
        .collect(Collectors.joining(",", "[", "]"));
  }

  private static String counts(String more) {
    return "{'source':{'rows':" + COUNTS + "}" + more + "}";
  }

  private static String effects(String more) {
    return "{" + EFFECTS + more + "}";
  }

  private static String network(String more) {
    return "{'model':'network','measure':'odds-ratio','source':{'rows':"
        + rows(6, "'study':'s','treatment':'t#','events':2,'total':9")
        + "}"
        + more
        + "}";
  }

  private static String survival(String more) {
    return "{'task':'survival','source':{'rows':"
        + rows(12, "'study':'s#','time':#,'event':1")
        + "}"
        + more
        + "}";
  }

  static Stream<Over> plansOverALimit() {
    String wide = rows(2, "'events':1,'total':4,'a':1,'b':2,'c':3");
    return Stream.of(
        new Over(Limit.ROWS, 11, counts(""), "source.rows over-the-limit", "12"),
        new Over(
            Limit.ROWS,
            5,
            "{'task':'reconstruct-curve','source':{'rows':[{'time':1,'survival':1}]},"
                + "'groups':{'a':{'patients':9}},'numbersAtRisk':{'rows':"
                + rows(6, "'time':#,'atRisk':9")
                + "}}",
            "numbersAtRisk.rows over-the-limit",
            "6"),
        new Over(
            Limit.COLUMNS,
            4,
            "{'source':{'rows':" + wide + "}}",
            "source.rows[0] over-the-limit",
            "5"),
        new Over(
            Limit.COLUMNS,
            3,
            "{'source':{'rows':[{'events':1}]},'f1':1,'f2':2,'f3':3}",
            " over-the-limit",
            "4"),
        new Over(Limit.CELLS, 20, counts(""), " over-the-limit", "39"),
        new Over(
            Limit.ENTRIES,
            5,
            counts(",'smallStudyEffects':[1,1,1,1,1,1]"),
            "smallStudyEffects over-the-limit",
            "6"),
        new Over(
            Limit.ENTRIES,
            5,
            counts(
                ",'vary':{'subsets':[{'column':'a','only':[['a'],['a'],['a'],['a'],['a'],['a']]}]}"),
            "vary.subsets[0].only over-the-limit",
            "6"),
        new Over(
            Limit.LETTERS,
            20,
            counts(",'title':'" + "x".repeat(21) + "'"),
            "title over-the-limit",
            "21"),
        new Over(
            Limit.LETTERS,
            20,
            "{'source':{'rows':[{'events':1,'total':2,'study':'" + "w".repeat(30) + "'}]}}",
            "source.rows[0].study over-the-limit",
            "30"),
        new Over(Limit.STUDIES, 11, counts(""), "source over-the-limit", "12"),
        new Over(Limit.TREATMENTS, 5, network(""), "columns.treatment too-many-treatments", "6"),
        new Over(
            Limit.DRAWS, 99, network(",'rankingDraws':100"), "rankingDraws over-the-limit", "100"),
        new Over(
            Limit.DRAWS,
            150,
            effects(",'moderators':['x'],'permutationTest':{'permutations':200}"),
            "permutationTest.permutations over-the-limit",
            "200"),
        new Over(Limit.CATEGORIES, 11, effects(",'subgroup':'c'"), "subgroup over-the-limit", "12"),
        new Over(
            Limit.CATEGORIES,
            11,
            effects(",'moderators':['x','c']"),
            "moderators[1] over-the-limit",
            "12"),
        new Over(
            Limit.TERMS, 2, effects(",'moderators':['x','y']"), "moderators over-the-limit", "3"),
        new Over(
            Limit.TERMS, 11, effects(",'moderators':['c']"), "moderators over-the-limit", "12"),
        new Over(
            Limit.ITEMS,
            100,
            effects(
                ",'moderators':['x'],'predictions':[{'x':1},"
                    + "{'column':'x','from':1,'to':2,'points':100}]"),
            "predictions over-the-limit",
            "101"),
        new Over(
            Limit.ITEMS,
            1_000,
            "{'task':'reconstruct-curve','source':{'rows':[{'group':'a','time':1,'survival':1}]},"
                + "'groups':{'a':{'patients':600},'b':{'patients':401}}}",
            "groups over-the-limit",
            "1,001"),
        new Over(
            Limit.ITEMS, 23, survival(",'survivalAt':[1,2]"), "survivalAt over-the-limit", "24"),
        new Over(
            Limit.ITEMS,
            23,
            survival(",'pooledCurve':{'times':[1,2]}"),
            "pooledCurve over-the-limit",
            "24"));
  }

  private static PlanOutcome run(Budget budget, String plan) {
    return Work.within(budget)
        .join(() -> Runner.withoutEvidence().run(plan.replace('\'', '"'), Optional.empty()));
  }

  private static Problem only(PlanOutcome outcome) {
    List<Problem> problems = assertInstanceOf(PlanOutcome.Wrong.class, outcome).problems();
    assertEquals(1, problems.size(), problems.toString());
    return problems.get(0);
  }

  @ParameterizedTest
  @MethodSource("plansOverALimit")
  void whatIsOverALimitIsRefusedAtItsPlaceWithNumberAndLimit(Over over) {
    Problem problem = only(run(Budget.UNLIMITED.with(over.limit(), over.most()), over.plan()));
    assertEquals(over.expected(), problem.where() + " " + problem.code());
    assertTrue(
        problem
            .message()
            .toLowerCase(java.util.Locale.ROOT)
            .contains("found " + over.found() + " "),
        problem.message());
    assertTrue(
        problem.message().contains(String.format(java.util.Locale.ROOT, "%,d", over.most())),
        problem.message());
  }

  @ParameterizedTest
  @MethodSource("plansOverALimit")
  void oneMoreIsEnoughToBeTaken(Over over) {
    Budget wider =
        Budget.UNLIMITED.with(over.limit(), Long.parseLong(over.found().replace(",", "")));
    assertFalse(
        run(wider, over.plan()).json().toString().contains("\"" + over.expected().split(" ")[1]),
        "the limit is one less than what is taken");
  }

  @Test
  void aTableOfTooManyRowsOrColumnsIsRefusedAtItsField(@TempDir Path folder) throws Exception {
    Files.writeString(folder.resolve("t.csv"), "events,total,a\n1,2,\n1,2,\n1,2,\n");
    String plan = "{\"source\":{\"table\":\"t.csv\"}}";
    for (Map.Entry<Limit, Integer> limit :
        Map.of(Limit.ROWS, 2, Limit.COLUMNS, 2, Limit.CELLS, 5).entrySet()) {
      Problem problem =
          only(
              Work.within(Budget.UNLIMITED.with(limit.getKey(), limit.getValue()))
                  .join(() -> Runner.withoutEvidence().run(plan, Optional.of(folder))));
      assertEquals("source.table over-the-limit", problem.where() + " " + problem.code());
    }
  }

  @Test
  void moreWrongRowsThanAnybodyReadsAreCounted() {
    int wrong = Problems.MOST + 500;
    String rows =
        IntStream.range(0, wrong).mapToObj(i -> "1").collect(Collectors.joining(",", "[", "]"));
    List<Problem> problems =
        assertInstanceOf(
                PlanOutcome.Wrong.class, run(Budget.STANDARD, "{'source':{'rows':" + rows + "}}"))
            .problems();
    assertEquals(Problems.MOST + 1, problems.size());
    assertEquals("source.rows[0]", problems.get(0).where());
    assertEquals("wrong-type", problems.get(0).code());
    assertTrue(problems.get(Problems.MOST).message().startsWith("500 more"));
  }

  @Test
  void aWrongRowFarDownIsFound() {
    String rows = COUNTS.substring(0, COUNTS.length() - 1) + ",[]]";
    Problem problem = only(run(Budget.STANDARD, "{'source':{'rows':" + rows + "}}"));
    assertEquals("source.rows[12] wrong-type", problem.where() + " " + problem.code());
  }

  @Test
  void aCurveOfMorePointsThanTheFormAllowsIsNotTakenForValuesOfModerators() {
    for (String points : List.of("1e16", "1001", "2.5", "-3", "9223372036854775807")) {
      Problem problem =
          only(
              run(
                  Budget.STANDARD,
                  effects(
                      ",'moderators':['x'],'predictions':[{'column':'x','from':1,'to':2,"
                          + "'points':"
                          + points
                          + "}]")));
      assertEquals("predictions[0].points out-of-range", problem.where() + " " + problem.code());
    }
  }

  @Test
  void workWithoutLimitsHasNone() {
    String title = "x".repeat(40_000);
    PlanOutcome outcome =
        Runner.withoutEvidence()
            .run(counts(",'title':'" + title + "'").replace('\'', '"'), Optional.empty());
    assertInstanceOf(PlanOutcome.Done.class, outcome);
  }

  @Test
  void aTreeIsCountedAsATextIs() {
    PlanOutcome outcome =
        Work.within(Budget.UNLIMITED.with(Limit.ROWS, 1))
            .join(
                () -> {
                  com.fasterxml.jackson.databind.node.ArrayNode rows = Plans.rows();
                  Plans.row(rows, "events", 1, "total", 2);
                  Plans.row(rows, "events", 1, "total", 2);
                  return Runner.withoutEvidence().run(Plans.on(rows), Optional.empty());
                });
    assertEquals("source.rows", only(outcome).where());
  }
}
