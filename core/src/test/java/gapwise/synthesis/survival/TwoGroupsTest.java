package gapwise.synthesis.survival;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The hazard ratio and the log-rank test of any two groups. */
class TwoGroupsTest {
  static LongStream seeds() {
    return LongStream.range(0, 150);
  }

  private static PatientTimes group(Random random, double stretch) {
    List<PatientTime> times = new ArrayList<>();
    int patients = 1 + random.nextInt(random.nextBoolean() ? 3 : 40);
    for (int i = 0; i < patients; i++) {
      times.add(new PatientTime(stretch * (1 + random.nextInt(12)), random.nextInt(3) > 0));
    }
    return PatientTimes.of(times);
  }

  private static TwoGroups two(PatientTimes group, PatientTimes against) {
    return TwoGroups.of(List.of(group), List.of(against));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void changingSidesTurnsTheRatioRoundAndLeavesTheTest(long seed) {
    Random random = new Random(seed);
    PatientTimes a = group(random, 1);
    PatientTimes b = group(random, 1);
    HazardRatio there = two(a, b).hazardRatio();
    HazardRatio back = two(b, a).hazardRatio();
    assertEquals(there.getClass(), back.getClass());
    if (there instanceof HazardRatio.Estimated one) {
      HazardRatio.Estimated other = assertInstanceOf(HazardRatio.Estimated.class, back);
      assertEquals(one.logEstimate(), -other.logEstimate(), 1e-9);
      assertEquals(one.standardError(), other.standardError(), 1e-9 * one.standardError());
    }
    assertEquals(two(a, b).logRank().isPresent(), two(b, a).logRank().isPresent());
    two(a, b)
        .logRank()
        .ifPresent(
            test ->
                assertEquals(
                    test.chiSquared(), two(b, a).logRank().orElseThrow().chiSquared(), 1e-9));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void onlyTheOrderOfTimesMatters(long seed) {
    HazardRatio plain =
        two(group(new Random(seed), 1), group(new Random(seed + 1), 1)).hazardRatio();
    HazardRatio stretched =
        two(group(new Random(seed), 16), group(new Random(seed + 1), 16)).hazardRatio();
    assertEquals(plain, stretched);
  }

  /** The score test of Cox's model without ties is the log-rank test (Cox 1972). */
  @Test
  void withoutTiesTheScoreTestIsTheLogRankTest() {
    List<PatientTime> a = new ArrayList<>();
    List<PatientTime> b = new ArrayList<>();
    Random random = new Random(4);
    for (int i = 0; i < 40; i++) {
      a.add(new PatientTime(random.nextDouble(), random.nextInt(4) > 0));
      b.add(new PatientTime(2 * random.nextDouble(), random.nextInt(4) > 0));
    }
    List<PairedRisk> table = PairedRisk.of(PatientTimes.of(a), PatientTimes.of(b));
    EfronLikelihood likelihood = new EfronLikelihood(table);
    double score = likelihood.score(0);
    assertEquals(
        score * score / likelihood.information(0),
        LogRank.of(table).orElseThrow().chiSquared(),
        1e-10);
  }

  @Test
  void theScoreIsTheSlopeOfTheInformation() {
    List<PairedRisk> table = PairedRisk.of(group(new Random(21), 1), group(new Random(22), 1));
    EfronLikelihood likelihood = new EfronLikelihood(table);
    double step = 1e-5;
    double slope = (likelihood.score(0.3 + step) - likelihood.score(0.3 - step)) / (2 * step);
    assertEquals(likelihood.information(0.3), -slope, 1e-6);
    assertTrue(likelihood.information(0.3) > 0);
  }
}
