package gapwise.decision.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.decision.option.Aspect;
import gapwise.decision.weighing.Standing;
import gapwise.decision.weighing.Wishes;
import gapwise.problem.Problem;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/**
 * A table weighed: shares by hand and by numerical integration (SciPy, as in WeighingTest), through
 * posteriors of averages; and what is not known, named.
 */
class WeighedTableTest {
  private static final List<Aspect> TWO = List.of(Aspect.UNION, Aspect.WORK);
  private static final Map<Aspect, Range> WHOLE =
      Map.of(Aspect.UNION, new Range(0, 100), Aspect.WORK, new Range(0, 100));

  private static WeighingAsked asked(Wishes wishes, Unknowns unknowns) {
    return new WeighingAsked(TWO, WHOLE, wishes, unknowns, 1);
  }

  private static WeighedMethods weighed(Tables tables, WeighingAsked asked) {
    return assertInstanceOf(
        WeighedMethods.class, WeighedTable.of(tables.table(), asked, tables.posteriors()));
  }

  private static WeighedTable.NotWeighed refused(Tables tables, WeighingAsked asked) {
    return assertInstanceOf(
        WeighedTable.NotWeighed.class, WeighedTable.of(tables.table(), asked, tables.posteriors()));
  }

  private static Tables three() {
    return new Tables(TWO)
        .with("bone-transport", Aspect.UNION, 1)
        .with("bone-transport", Aspect.WORK, 0)
        .with("induced-membrane", Aspect.UNION, 0)
        .with("induced-membrane", Aspect.WORK, 1)
        .with("autograft", Aspect.UNION, 0.6)
        .with("autograft", Aspect.WORK, 0.6);
  }

  /** A (1, 0), B (0, 1), C (.6, .6): first .4, .4, .2; A's mean weights .8, .2 (geometry). */
  @Test
  void sharesOfThreeMethodsAreThoseWorkedOutByHand() {
    WeighedMethods methods = weighed(three(), asked(Wishes.none(), Unknowns.RANGE));
    List<Standing> standings = methods.weighed().standings();
    double within = 3 * methods.weighed().error(0.4);
    assertEquals(0.4, standings.get(0).first(), within);
    assertEquals(0.4, standings.get(1).first(), within);
    assertEquals(0.2, standings.get(2).first(), within);
    assertEquals(0.8, standings.get(0).favour().orElseThrow().weights().get(0), 0.01);
    assertEquals(List.of(60.0, 60.0), rounded(methods.means().get(2)));
  }

  /** With the first outcome the more important A leads in .8, B never, C in .2 (geometry). */
  @Test
  void whoNeverComesFirstHasNoWishesAndIsToldWhereItIsBehind() {
    Wishes order = Wishes.none().inOrder(List.of("union", "work"));
    WeighedMethods methods = weighed(three(), asked(order, Unknowns.RANGE));
    assertEquals(0.8, methods.weighed().standings().get(0).first(), 0.012);
    assertTrue(methods.weighed().standings().get(1).favour().isEmpty());
    assertEquals(new WeighedMethods.Behind(0, 0), methods.behind(1).orElseThrow());
  }

  /**
   * Means .7, .4 against .5, .6, sd .1, normal: first in .5, central weight .673051, confidence
   * .743488; first outcome more important .777713 (numerical integration, SciPy).
   */
  @Test
  void uncertainAveragesAreDrawnFromTheirPosteriors() {
    Tables tables =
        new Tables(TWO)
            .with("bone-transport", Aspect.UNION, normal(0.7), 2001)
            .with("bone-transport", Aspect.WORK, normal(0.4), 2001)
            .with("induced-membrane", Aspect.UNION, normal(0.5), 2001)
            .with("induced-membrane", Aspect.WORK, normal(0.6), 2001);
    Standing first =
        weighed(tables, asked(Wishes.none(), Unknowns.RANGE)).weighed().standings().get(0);
    assertEquals(0.5, first.first(), 0.015);
    assertEquals(0.673051, first.favour().orElseThrow().weights().get(0), 0.012);
    assertEquals(0.743488, first.favour().orElseThrow().confidence(), 0.015);
    Wishes order = Wishes.none().inOrder(List.of("union", "work"));
    assertEquals(
        0.777713,
        weighed(tables, asked(order, Unknowns.RANGE)).weighed().standings().get(0).first(),
        0.015);
  }

  private static DoubleUnaryOperator normal(double mean) {
    return NormalDistribution.of(mean, 0.1)::inverseCumulativeProbability;
  }

  private static List<Double> rounded(List<Double> numbers) {
    return numbers.stream().map(one -> Math.round(one * 1000) / 1000.0).toList();
  }

  @Test
  void theSameSeedGivesTheSameAndAnotherMethodMovesNoDraws() {
    WeighingAsked asked = asked(Wishes.none(), Unknowns.LEAVE_OUT);
    WeighedMethods once = weighed(three(), asked);
    assertEquals(once.weighed(), weighed(three(), asked).weighed());
    Tables more = three().with("allograft", Aspect.UNION, 0.1).with("allograft", Aspect.WORK, 0.1);
    assertEquals(once.means(), weighed(more, asked).means().subList(0, 3));
  }

  @Test
  void whatIsNotKnownIsLeftOutByNameOrTakenAsItsWholeRange() {
    Tables tables = three().with("allograft", Aspect.UNION, 0.9).method("metal-cage");
    WeighedMethods out = weighed(tables, asked(Wishes.none(), Unknowns.LEAVE_OUT));
    assertEquals(3, out.methods().size());
    assertEquals(List.of("Back at work: no study counted it"), out.leftOut().get(0).why());
    WeighedMethods range = weighed(tables, asked(Wishes.none(), Unknowns.RANGE));
    assertEquals(4, range.methods().size());
    assertEquals("metal-cage", range.leftOut().get(0).method().code());
    assertEquals("allograft", range.filled().get(0).method().code());
    // Uniform on 0 to 100: mean 50, standard error 28.9/100.
    assertEquals(50, range.means().get(3).get(1), 1.2);
  }

  @Test
  void anAmputationHasNoBoneToJoinAndIsLeftOutWhereThatIsWeighed() {
    Tables tables = three().with("primary-amputation", Aspect.WORK, 0.7);
    WeighedMethods methods = weighed(tables, asked(Wishes.none(), Unknowns.RANGE));
    assertEquals(
        List.of(
            new Named(
                tables.table().options().get(3).method(),
                List.of("Bone joined: means nothing after it"))),
        methods.leftOut());
  }

  @Test
  void wishesThatContradictEachOtherAreNamedBeforeAnythingIsDrawn() {
    Wishes over = Wishes.none().atLeast("union", 0.7).atLeast("work", 0.5);
    Problem problem = refused(three(), asked(over, Unknowns.RANGE)).problems().get(0);
    assertEquals("least-weights-over-1", problem.code());
    assertTrue(problem.message().contains("Bone joined 0.7, Back at work 0.5"), problem.message());
  }

  @Test
  void oneMethodAloneIsNoComparison() {
    Tables one = new Tables(TWO).with("autograft", Aspect.UNION, 0.5).method("allograft");
    WeighedTable.NotWeighed refused = refused(one, asked(Wishes.none(), Unknowns.RANGE));
    assertEquals("fewer-than-two-methods", refused.problems().get(0).code());
    assertEquals("allograft", refused.leftOut().get(0).method().code());
  }
}
