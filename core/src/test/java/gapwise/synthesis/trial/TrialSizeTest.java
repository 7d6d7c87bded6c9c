package gapwise.synthesis.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.effect.ArmMean;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TrialSizeTest {
  private static final Demands USUAL = new Demands(0.05, 0.80);

  /** Reference: base R, power.prop.test(p1, p2, power, sig.level, tol = 1e-12)$n. */
  @ParameterizedTest
  @CsvSource({
    "0.50, 0.75, 0.90, 0.05, 76.7069284517774",
    "0.85, 0.95, 0.80, 0.05, 140.095089861427",
    "0.90, 0.95, 0.80, 0.05, 434.43202243947",
    "0.02, 0.10, 0.80, 0.05, 137.151634583745",
    "0.60, 0.70, 0.95, 0.01, 807.067425314228"
  })
  void patientsForTwoProportionsAgreeWithBaseR(
      double p1, double p2, double power, double significance, double n) {
    Demands demands = new Demands(significance, power);
    // R's root is found to 1e-12 of its scale, in practice to some eight digits
    assertEquals(n, new TrialOfProportions(p1, p2).patientsPerArm(demands), 1e-7 * n);
    assertEquals(n, new TrialOfProportions(p2, p1).patientsPerArm(demands), 1e-7 * n);
  }

  @Test
  void continuityCorrectionGivesThePublishedExample() {
    // Fleiss, Levin and Paik 2003, section 4.2: 0.60 against 0.70 at 1 %, power 95 %: 827 in each
    // arm, 807.067/4 (1 + root(1 + 4/80.7067))^2 = 826.95; derived by
    // core/src/test/reference/trial_sizes.py
    double n =
        new TrialOfProportions(0.60, 0.70)
            .patientsPerArmWithContinuityCorrection(new Demands(0.01, 0.95));
    assertEquals(827, Math.ceil(n));
    assertEquals(826.95, n, 0.005);
  }

  /**
   * Reference: SciPy's fisher_exact over every outcome, core/src/test/reference/exact_trials.py.
   */
  @ParameterizedTest
  @CsvSource({
    "0.05, 0.95, 5, 0.9138616441006835, 0.6634204312890627",
    "0.1, 0.6, 17, 0.8265718156050211, 0.7856005219007034",
    "0.2, 0.6, 27, 0.8024321669763467, 0.7993039760985722",
    "0.9, 0.5, 23, 0.8114222557335713, 0.7862866091156065"
  })
  void patientsForASmallTrialAreThoseOfTheExactTest(
      double p1, double p2, int n, double power, double powerOfOneLess) {
    TrialOfProportions trial = new TrialOfProportions(p1, p2);
    assertEquals(n, trial.patientsPerArmByExactTest(USUAL).orElseThrow());
    assertEquals(power, trial.powerOfExactTest(n, USUAL), 1e-10);
    assertEquals(powerOfOneLess, trial.powerOfExactTest(n - 1, USUAL), 1e-10);
  }

  @Test
  void aLargeTrialIsNotCountedOut() {
    assertTrue(new TrialOfProportions(0.85, 0.95).patientsPerArmByExactTest(USUAL).isEmpty());
  }

  /** Reference: base R, power.t.test(delta, sd, power, tol = 1e-12)$n. */
  @ParameterizedTest
  @CsvSource({
    "1, 1, 0.90, 22.021095570094",
    "0.5, 1, 0.80, 63.7657637248468",
    "0.8, 1, 0.80, 25.524631229888",
    "0.2, 1, 0.80, 393.406656228128",
    "-0.22314355131420976, 0.4, 0.80, 51.4198382563344",
    "3, 1, 0.80, 3.0700097469493"
  })
  void patientsForTwoMeansAgreeWithBaseR(double difference, double sd, double power, double n) {
    double found =
        new TrialOfMeans(difference, sd).patientsPerArm(new Demands(0.05, power)).orElseThrow();
    assertEquals(n, found, 1e-7 * n);
  }

  @Test
  void patientsForTwoMeansRoundUpToCohensTable() {
    // Cohen 1988, table 2.4.1, two-sided 5 %, power 80 %: d 0.50 needs 64, d 0.80 needs 26; derived
    // by core/src/test/reference/trial_sizes.py
    assertEquals(64, Math.ceil(new TrialOfMeans(0.5, 1).patientsPerArm(USUAL).orElseThrow()));
    assertEquals(26, Math.ceil(new TrialOfMeans(8, 10).patientsPerArm(USUAL).orElseThrow()));
  }

  /** Reference: base R, 1 - pt(qt(0.975, df), df, ncp). */
  @ParameterizedTest
  @CsvSource({
    "2, 3, 0.387389350200811",
    "4, 2, 0.335810930363968",
    "20, 0, 0.025",
    "20, 1, 0.156879884403324",
    "20, 5, 0.997349989303886",
    "126, 2.828427, 0.801458588865115"
  })
  void tailsOfNoncentralTAgreeWithBaseR(double degreesOfFreedom, double delta, double tail) {
    double critical =
        org.apache.commons.statistics.distribution.TDistribution.of(degreesOfFreedom)
            .inverseSurvivalProbability(0.025);
    assertEquals(tail, NoncentralT.above(critical, degreesOfFreedom, delta), 1e-10);
  }

  @Test
  void aLargeDifferenceNeedsTwoPatientsAndATinyOneMoreThanThereAre() {
    assertEquals(2, new TrialOfMeans(100, 1).patientsPerArm(USUAL).orElseThrow());
    assertTrue(new TrialOfMeans(1e-6, 1).patientsPerArm(USUAL).isEmpty());
  }

  @Test
  void spreadIsPooledByDegreesOfFreedom() {
    // By hand: (9 x 4 + 19 x 9)/28 = 207/28, root 2.71899...
    List<ArmMean> groups = List.of(group(10, 8, 2), group(20, 12, 3), group(1, 5, 1));
    assertEquals(Math.sqrt(207 / 28.0), CommonSpread.of(groups, false).orElseThrow(), 1e-15);
    assertEquals(2, CommonSpread.groups(groups, false));
    // Of logs, by hand: (9 log(1 + 1/16) + 19 log(1 + 1/16))/28 = log(1.0625), root 0.2462206...
    assertEquals(Math.sqrt(Math.log(1.0625)), CommonSpread.of(groups, true).orElseThrow(), 1e-15);
  }

  @Test
  void noSpreadIsToldWhereNoGroupTellsOne() {
    ArmMean silent = new ArmMean(10, OptionalDouble.of(8), OptionalDouble.empty(), false, false);
    assertTrue(CommonSpread.of(List.of(silent), true).isEmpty());
    assertTrue(CommonSpread.of(List.of(group(9, 8, 0)), false).isEmpty());
  }

  @Test
  void whatCannotBeIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new TrialOfProportions(0, 0.5));
    assertThrows(IllegalArgumentException.class, () -> new TrialOfProportions(0.5, 1));
    assertThrows(IllegalArgumentException.class, () -> new TrialOfProportions(0.5, 0.5));
    assertThrows(IllegalArgumentException.class, () -> new TrialOfMeans(0, 1));
    assertThrows(IllegalArgumentException.class, () -> new TrialOfMeans(Double.NaN, 1));
    assertThrows(IllegalArgumentException.class, () -> new TrialOfMeans(1, 0));
    assertThrows(IllegalArgumentException.class, () -> new Demands(0.05, 0.4));
    assertThrows(IllegalArgumentException.class, () -> new Demands(0, 0.8));
  }

  private static ArmMean group(double n, double mean, double sd) {
    return new ArmMean(n, OptionalDouble.of(mean), OptionalDouble.of(sd), false, false);
  }
}
