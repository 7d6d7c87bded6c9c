package gapwise.synthesis.multiverse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import gapwise.effect.BackTransform;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.TauSquaredEstimator;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.pooling.InverseVariance;
import gapwise.synthesis.pooling.MeanInterval;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.testing.BcgTrials;
import gapwise.synthesis.testing.Pooling;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class EffectApproachTest {
  private static final Settings NONE = Settings.none(1);

  private static final Subset ALL = new Subset(NONE, IntStream.range(0, 13).boxed().toList());

  private static List<AnalysisFinding> findings(
      EffectSample sample, Subset rows, List<PoolingSettings> ways) {
    return new EffectApproach(
            "log",
            ways.stream().map(how -> new EffectApproach.Way(NONE, how)).toList(),
            places -> new Body(sample.at(places), BackTransform.EXPONENTIAL, places, "no-effects"))
        .findings(rows);
  }

  private static AnalysisFinding.Estimated value(AnalysisFinding finding) {
    return assertInstanceOf(AnalysisFinding.Estimated.class, finding);
  }

  @Test
  void poolsTheVaccineTrialsAsTheReferenceScriptDoes() {
    // Mean -0.747392350, variance 0.036965003 by small_rooms.py; 1.959964 by Abramowitz and Stegun.
    AnalysisFinding.Estimated found =
        value(
            findings(
                    BcgTrials.logOddsRatios(),
                    ALL,
                    List.of(Pooling.randomEffects("dersimonian-laird")))
                .get(0));
    assertEquals(-0.747392350, found.estimate(), 5e-10);
    assertEquals(-0.747392350 - 1.959964 * Math.sqrt(0.036965003), found.lower(), 1e-6);
    assertEquals(Math.exp(-0.747392350), found.shownEstimate(), 5e-10);
    assertEquals(13, found.studies());
  }

  @Test
  void whatWaysShareIsWhatEachComesToAlone() {
    List<PoolingSettings> ways = new ArrayList<>(List.of(Pooling.commonEffect()));
    for (TauSquaredEstimator estimator : TauSquaredEstimators.all()) {
      for (MeanInterval interval : MeanIntervals.all()) {
        PoolingSettings plain = Pooling.commonEffect();
        ways.add(
            new PoolingSettings(
                Optional.of(estimator),
                interval,
                plain.prediction(),
                plain.tauSquaredInterval(),
                0.95));
      }
    }
    List<AnalysisFinding> together = findings(BcgTrials.logOddsRatios(), ALL, ways);
    for (int i = 0; i < ways.size(); i++) {
      PooledMean alone =
          InverseVariance.pool(BcgTrials.logOddsRatios(), ways.get(i)).mean().orElseThrow();
      assertEquals(alone.estimate(), value(together.get(i)).estimate(), 0, "way " + i);
      assertEquals(alone.interval().lower(), value(together.get(i)).lower(), 0, "way " + i);
      assertEquals(alone.interval().upper(), value(together.get(i)).upper(), 0, "way " + i);
    }
  }

  @Test
  void oneRowIsItsOwnResult() {
    AnalysisFinding.Estimated found =
        value(
            findings(
                    BcgTrials.logOddsRatios(),
                    new Subset(NONE, List.of(7)),
                    List.of(Pooling.randomEffects("dersimonian-laird")))
                .get(0));
    assertEquals(BcgTrials.logOddsRatios().effect(7), found.estimate(), 0);
    assertEquals(1, found.studies());
  }

  @Test
  void noRowIsNotEstimatedForTheReasonTheRowsGive() {
    assertEquals(
        new AnalysisFinding.NotEstimated("no-effects"),
        findings(
                BcgTrials.logOddsRatios(),
                new Subset(NONE, List.of()),
                List.of(Pooling.commonEffect()))
            .get(0));
  }

  @Test
  void aStudyWithoutVarianceLeavesNoWay() {
    EffectSample sharp = EffectSample.of(new double[] {1, 2}, new double[] {0, 1});
    assertEquals(
        List.of(
            new AnalysisFinding.NotEstimated("zero-variance"),
            new AnalysisFinding.NotEstimated("zero-variance")),
        findings(
            sharp,
            new Subset(NONE, List.of(0, 1)),
            List.of(Pooling.commonEffect(), Pooling.randomEffects("dersimonian-laird"))));
  }
}
