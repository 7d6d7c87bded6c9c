package gapwise.demonstration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.vocabulary.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TruthTest {

  /** Limbs of many studies of one method, so that deviations of studies cancel. */
  private static List<TrueLimb> many(String method) {
    ArmPlan plan = ArmPlan.of(method, 20, 6.5, LengthStyle.NOTHING);
    List<TrueLimb> limbs = new ArrayList<>();
    for (int study = 1; study <= 300; study++) {
      limbs.addAll(LimbSimulator.limbs(plan, Draw.of(7, study, Draw.Purpose.PATIENTS)));
    }
    return limbs;
  }

  private static double share(List<TrueLimb> of, Predicate<TrueLimb> happened) {
    return of.stream().filter(happened).count() / (double) of.size();
  }

  private static List<TrueLimb> where(List<TrueLimb> limbs, Predicate<TrueLimb> belongs) {
    return limbs.stream().filter(belongs).toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"bone-transport", "induced-membrane", "autograft", "printed-scaffold"})
  void longerGapsJoinLessOften(String method) {
    List<TrueLimb> limbs = many(method);
    double shorter =
        share(
            where(limbs, l -> l.start().defectCentimetres() < 5.5), l -> l.course().primaryUnion());
    double longer =
        share(
            where(limbs, l -> l.start().defectCentimetres() > 7.5), l -> l.course().primaryUnion());
    assertTrue(shorter > longer, shorter + " against " + longer);
  }

  @ParameterizedTest
  @ValueSource(strings = {"bone-transport", "induced-membrane", "autograft", "allograft"})
  void infectedLimbsJoinLessOftenAndAreInfectedAgainMoreOften(String method) {
    List<TrueLimb> limbs = many(method);
    List<TrueLimb> infected = where(limbs, l -> l.start().infected());
    List<TrueLimb> clean = where(limbs, l -> !l.start().infected());
    assertTrue(
        share(infected, l -> l.course().primaryUnion())
            < share(clean, l -> l.course().primaryUnion()));
    assertTrue(
        share(infected, TrueLimb::infectedInFollowUp) > share(clean, TrueLimb::infectedInFollowUp));
  }

  @Test
  void studiesDifferByMoreThanChance() {
    ArmPlan plan = ArmPlan.of("induced-membrane", 40, 6, LengthStyle.NOTHING);
    List<Double> shares =
        IntStream.rangeClosed(1, 200)
            .mapToObj(
                study ->
                    share(
                        LimbSimulator.limbs(plan, Draw.of(11, study, Draw.Purpose.PATIENTS)),
                        l -> l.course().primaryUnion()))
            .toList();
    double mean = shares.stream().mapToDouble(x -> x).average().orElseThrow();
    double variance =
        shares.stream().mapToDouble(x -> (x - mean) * (x - mean)).sum() / (shares.size() - 1);
    assertTrue(variance > 1.3 * mean * (1 - mean) / 40, variance + " at mean " + mean);
  }

  @Test
  void transportTakesThirteenToTwentyTenthsOfAMonthInTheFrameForEachCentimetre() {
    List<TrueLimb> limbs = many("bone-transport");
    double index =
        limbs.stream()
            .mapToDouble(l -> l.course().frameMonths() / l.start().defectCentimetres())
            .average()
            .orElseThrow();
    assertTrue(index > 1.3 && index < 2, "index " + index);
  }

  @Test
  void twelveMonthsMissAboutHalfOfTheInfections() {
    List<TrueLimb> limbs = many("induced-membrane");
    double early = share(limbs, l -> l.infectedWithin(12));
    double all = share(limbs, l -> Double.isFinite(l.course().infectionMonths()));
    assertTrue(early > 0.4 * all && early < 0.7 * all, early + " of " + all);
  }

  @Test
  void theChanceAtSixCentimetresWithoutInfectionIsTheOneWrittenDown() {
    for (Method method : Method.vocabulary().all()) {
      Truth truth = Truth.of(method.code());
      assertEquals(truth.primaryUnionAtSixCentimetres(), truth.primaryUnion(6, false, 0), 1e-12);
    }
  }

  @Test
  void aMethodWithoutATruthIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> Truth.of("no-such-method"));
  }

  @Test
  void aLongerListOfOneStreamStartsWithTheShorterOne() {
    ArmPlan few = ArmPlan.of("bone-transport", 9, 7, LengthStyle.NOTHING);
    ArmPlan more = ArmPlan.of("bone-transport", 14, 7, LengthStyle.NOTHING);
    List<TrueLimb> first = LimbSimulator.limbs(few, Draw.of(3, 2, Draw.Purpose.PATIENTS));
    List<TrueLimb> second = LimbSimulator.limbs(more, Draw.of(3, 2, Draw.Purpose.PATIENTS));
    assertEquals(first, second.subList(0, 9));
  }

  /** Mean 0, variance 1 and 2.5 % beyond 1.96: the standard normal law in any handbook's table. */
  @Test
  void normalDrawsFollowTheNormalLaw() {
    Draw draw = Draw.of(5, 1, Draw.Purpose.REPORTING);
    double[] values = IntStream.range(0, 100_000).mapToDouble(i -> draw.normal()).toArray();
    double mean = IntStream.range(0, values.length).mapToDouble(i -> values[i]).average().orElse(9);
    double square =
        IntStream.range(0, values.length).mapToDouble(i -> values[i] * values[i]).sum()
            / values.length;
    long beyond = IntStream.range(0, values.length).filter(i -> values[i] > 1.96).count();
    // four standard errors of each at 100 000 draws
    assertEquals(0, mean, 0.0127);
    assertEquals(1, square, 0.0179);
    assertEquals(2500, beyond, 198);
  }
}
