package gapwise.synthesis.smallstudy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.effect.TwoByTwo;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.testing.BcgTrials;
import gapwise.synthesis.testing.Pooling;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Tests of a funnel's asymmetry on the trials of a vaccine. Numbers by {@code small_rooms.py} of
 * the reference scripts: NumPy's least squares, SciPy's Kendall.
 */
class AsymmetryTest {
  /** Half a unit of the last digit that the script prints. */
  private static final double PRINTED = 5e-10;

  private static SmallStudyData data(EffectSample effects, Optional<List<TwoByTwo>> tables) {
    return new SmallStudyData(effects, tables, true, 0, Pooling.commonEffect());
  }

  private static SmallStudyData trials() {
    return data(BcgTrials.logOddsRatios(), Optional.of(BcgTrials.tables()));
  }

  private static AsymmetryFinding.Line line(SmallStudyTest test) {
    return assertInstanceOf(AsymmetryFinding.Line.class, test.find(trials()));
  }

  private static String refusal(SmallStudyTest test, SmallStudyData data) {
    return assertInstanceOf(AsymmetryFinding.Refused.class, test.find(data)).why().code();
  }

  @Test
  void eggerIsALineOfStandardisedEffectsOverPrecision() {
    AsymmetryFinding.Line line = line(new Egger());
    assertEquals(-2.345341242, line.intercept(), PRINTED);
    assertEquals(-0.157098863, line.slope(), PRINTED);
    assertEquals(-1.506950697, line.statistic(), PRINTED);
    assertEquals(0.159991485, line.pValue(), PRINTED);
    assertEquals(11, line.degreesOfFreedom());
  }

  @Test
  void petersIsALineOverOneByTheNumberOfPatients() {
    AsymmetryFinding.Line line = line(new Peters());
    assertEquals(-0.429308426, line.intercept(), PRINTED);
    assertEquals(-563.688203913, line.slope(), PRINTED);
    assertEquals(-1.362476199, line.statistic(), PRINTED);
    assertEquals(0.200291792, line.pValue(), PRINTED);
  }

  @Test
  void harbordIsALineOfScoresOverTheRootOfInformation() {
    AsymmetryFinding.Line line = line(new Harbord());
    assertEquals(-2.092991541, line.intercept(), PRINTED);
    assertEquals(-0.230842623, line.slope(), PRINTED);
    assertEquals(-1.256474344, line.statistic(), PRINTED);
    assertEquals(0.234971952, line.pValue(), PRINTED);
  }

  @Test
  void beggIsKendallsTauWithItsExactP() {
    AsymmetryFinding.Ranks ranks =
        assertInstanceOf(AsymmetryFinding.Ranks.class, new Begg().find(trials()));
    assertEquals(0.025641026, ranks.kendallTau(), PRINTED);
    assertEquals(0.952361908, ranks.exactPValue().orElseThrow(), PRINTED);
    // Two more pairs in order than not, of 78; variance 13 x 12 x 31/18 (Kendall 1948, chapter 4).
    assertEquals(2, ranks.score());
    assertEquals(2 / Math.sqrt(13.0 * 12 * 31 / 18), ranks.statistic(), 1e-14);
    assertEquals(1 / Math.sqrt(13.0 * 12 * 31 / 18), ranks.continuityStatistic(), 1e-14);
  }

  @Test
  void eggerWithAVarianceBetweenStudiesIsARegressionOnTheError() {
    // Effects 1 + 2 se, each pair of one size 0.1 above and below: the line is theirs, and the
    // errors of its slope are 1/sum w (se - mean)^2, closed form with all weights given.
    double[] errors = {0.5, 0.5, 1, 1, 1.5, 1.5, 2, 2, 2.5, 2.5};
    double[] effects = new double[errors.length];
    double[] variances = new double[errors.length];
    for (int i = 0; i < errors.length; i++) {
      effects[i] = 1 + 2 * errors[i] + (i % 2 == 0 ? 0.1 : -0.1);
      variances[i] = errors[i] * errors[i];
    }
    AsymmetryFinding.RandomLine line =
        assertInstanceOf(
            AsymmetryFinding.RandomLine.class,
            new EggerRandom().find(data(EffectSample.of(effects, variances), Optional.empty())));
    double weights = 0;
    double first = 0;
    double second = 0;
    for (double error : errors) {
      double weight = 1 / (error * error);
      weights += weight;
      first += weight * error;
      second += weight * error * error;
    }
    // So little about the line that nothing is left between studies.
    assertEquals(0, line.tauSquared());
    assertEquals(2, line.slope(), 1e-12);
    assertEquals(1, line.limit(), 1e-12);
    assertEquals(1 / Math.sqrt(second - first * first / weights), line.standardError(), 1e-12);
  }

  @ParameterizedTest
  @ValueSource(strings = {"egger", "egger-random", "begg"})
  void turnsRoundWithTheGroups(String name) {
    EffectSample sample = BcgTrials.logOddsRatios();
    EffectSample turned =
        EffectSample.of(
            IntStream.range(0, 13).mapToDouble(i -> -sample.effect(i)).toArray(),
            IntStream.range(0, 13).mapToDouble(sample::variance).toArray());
    SmallStudyTest test = SmallStudyTests.named(name).orElseThrow();
    assertEquals(
        -statistic(test.find(data(sample, Optional.empty()))),
        statistic(test.find(data(turned, Optional.empty()))),
        1e-12);
  }

  private static double statistic(AsymmetryFinding finding) {
    if (finding instanceof AsymmetryFinding.Line line) {
      return line.statistic();
    }
    return finding instanceof AsymmetryFinding.RandomLine line
        ? line.statistic()
        : assertInstanceOf(AsymmetryFinding.Ranks.class, finding).statistic();
  }

  @ParameterizedTest
  @ValueSource(strings = {"egger", "egger-random", "begg", "peters", "harbord"})
  void isRefusedBelowThreeStudies(String name) {
    List<Integer> two = IntStream.range(0, 2).boxed().toList();
    SmallStudyData few =
        data(BcgTrials.logOddsRatios().at(two), Optional.of(BcgTrials.tables().subList(0, 2)));
    assertEquals("too-few-studies", refusal(SmallStudyTests.named(name).orElseThrow(), few));
  }

  @ParameterizedTest
  @ValueSource(strings = {"peters", "harbord"})
  void thatReadsCountsIsRefusedWithoutThem(String name) {
    assertEquals(
        "small-study-test-not-for-measure",
        refusal(
            SmallStudyTests.named(name).orElseThrow(),
            data(BcgTrials.logOddsRatios(), Optional.empty())));
  }

  @Test
  void ofEffectsAgainstErrorsIsRefusedWhereHalfTheStudiesAreSparse() {
    SmallStudyData sparse =
        new SmallStudyData(
            BcgTrials.logOddsRatios(), Optional.empty(), true, 7, Pooling.commonEffect());
    assertEquals("events-too-rare-for-small-study-test", refusal(new Egger(), sparse));
  }

  @Test
  void ofStudiesOfOneSizeHasNothingToTest() {
    EffectSample alike =
        EffectSample.of(
            IntStream.range(0, 12).mapToDouble(Math::sin).toArray(),
            IntStream.range(0, 12).mapToDouble(i -> 0.25).toArray());
    assertEquals("no-variation", refusal(new Egger(), data(alike, Optional.empty())));
  }

  @Test
  void saysThatItIsNoProof() {
    assertTrue(line(new Egger()).sentence().contains("no proof"));
  }
}
