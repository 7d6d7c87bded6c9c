package gapwise.synthesis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.budget.Budget;
import gapwise.budget.Work;
import gapwise.budget.WorkStoppedException;
import gapwise.effect.ArmCounts;
import gapwise.synthesis.agreement.IntraclassCorrelation;
import gapwise.synthesis.agreement.Kappa;
import gapwise.synthesis.bayes.MeanPrior;
import gapwise.synthesis.bayes.Posterior;
import gapwise.synthesis.bayes.Priors;
import gapwise.synthesis.bayes.TauPrior;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.ResidualSums;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.heterogeneity.TauSquaredEstimator;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.LikelihoodLimits;
import gapwise.synthesis.multilevel.ClusteredRows;
import gapwise.synthesis.multilevel.ThreeLevelModel;
import gapwise.synthesis.multiverse.AnalysisFinding;
import gapwise.synthesis.multiverse.Approach;
import gapwise.synthesis.multiverse.Choice;
import gapwise.synthesis.multiverse.Multiverse;
import gapwise.synthesis.multiverse.Settings;
import gapwise.synthesis.multiverse.Subset;
import gapwise.synthesis.network.Network;
import gapwise.synthesis.network.NetworkPredictions;
import gapwise.synthesis.network.NetworkSettings;
import gapwise.synthesis.network.NetworkStudy;
import gapwise.synthesis.network.RankDraws;
import gapwise.synthesis.patients.BinaryModel;
import gapwise.synthesis.patients.Patient;
import gapwise.synthesis.patients.StudyEvidence;
import gapwise.synthesis.pooling.LeaveOneOut;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Prediction;
import gapwise.synthesis.regression.DesignMatrix;
import gapwise.synthesis.regression.PermutationTest;
import gapwise.synthesis.regression.Regression;
import gapwise.synthesis.regression.RegressionSettings;
import gapwise.synthesis.regression.RegressionTest;
import gapwise.synthesis.smallstudy.SmallStudyData;
import gapwise.synthesis.smallstudy.TrimAndFill;
import gapwise.synthesis.survival.CurveReconstruction;
import gapwise.synthesis.survival.DigitisedCurve;
import gapwise.synthesis.survival.NumbersAtRisk;
import gapwise.synthesis.survival.PatientTime;
import gapwise.synthesis.survival.PatientTimes;
import gapwise.synthesis.survival.PooledCurve;
import gapwise.synthesis.survival.TwoGroups;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Work that nobody waits for ends at once, whatever it is at and in every thread. */
class StoppedWorkTest {
  private static final int STUDIES = 60;

  /** Something that takes long. */
  record Long(String name, Supplier<Object> work) {
    @Override
    public String toString() {
      return name;
    }
  }

  private static EffectSample sample() {
    List<Double> effects = new ArrayList<>();
    List<Double> variances = new ArrayList<>();
    for (int i = 0; i < STUDIES; i++) {
      effects.add(Math.sin(i));
      variances.add(0.1 + i % 7);
    }
    return EffectSample.of(effects, variances);
  }

  private static PoolingSettings pooling(TauSquaredEstimator estimator) {
    return new PoolingSettings(
        Optional.of(estimator),
        MeanIntervals.normal(),
        new Prediction(Prediction.Reference.NORMAL, Prediction.Error.SUM_OF_WEIGHTS),
        TauSquaredInterval.Q_PROFILE,
        0.95);
  }

  private static TauSquaredEstimator restricted() {
    return TauSquaredEstimators.named("restricted-maximum-likelihood").orElseThrow();
  }

  private static DesignMatrix design() {
    return DesignMatrix.of(
        List.of(DesignMatrix.INTERCEPT, "x"),
        IntStream.range(0, STUDIES).mapToObj(i -> new double[] {1, i}).toList());
  }

  private static RegressionSettings regression(TauSquaredEstimator estimator) {
    return new RegressionSettings(pooling(estimator), RegressionTest.HARTUNG_KNAPP);
  }

  private static List<NetworkStudy> network() {
    List<NetworkStudy> studies = new ArrayList<>();
    for (int i = 0; i < STUDIES; i++) {
      studies.add(
          new NetworkStudy(
              "s" + i,
              List.of("t" + i % 5, "t" + (i % 5 + 1 + i % 3) % 6),
              List.of(Math.cos(i)),
              List.of(List.of(0.2 + i % 4))));
    }
    return studies;
  }

  private static NetworkSettings networkSettings(TauSquaredEstimator estimator) {
    return new NetworkSettings(
        Optional.of(estimator),
        NetworkPredictions.Spread.UNKNOWN,
        TauSquaredInterval.Q_PROFILE,
        0.95);
  }

  private static PatientTimes times(int shift) {
    return PatientTimes.of(
        IntStream.range(0, 50)
            .mapToObj(i -> new PatientTime(1 + (i * 7 + shift) % 50, i % 3 > 0))
            .toList());
  }

  static Stream<Long> whatTakesLong() {
    List<List<Double>> ratings =
        IntStream.range(0, 50).mapToObj(i -> List.of((double) i, i + Math.sin(i))).toList();
    // Made beforehand, with nobody to stop it.
    Network fitted =
        ((Network.Fitted.Done) Network.of(network(), "t0", networkSettings(restricted())))
            .network();
    return Stream.of(
        new Long("influence", () -> LeaveOneOut.of(sample(), pooling(restricted()))),
        new Long("regression", () -> Regression.of(sample(), design(), regression(restricted()))),
        new Long(
            "permutations",
            () -> PermutationTest.of(sample(), design(), regression(restricted()), 100_000, 1)),
        new Long("network", () -> Network.of(network(), "t0", networkSettings(restricted()))),
        new Long("ranks", () -> fitted.ranking(true, new RankDraws(1, 1_000_000))),
        new Long("splitting", () -> splits(fitted)),
        new Long(
            "posterior",
            () -> Posterior.of(sample(), new Priors(MeanPrior.FLAT, new TauPrior.HalfNormal(1)))),
        new Long(
            "exact likelihood",
            () ->
                new ExactLikelihood(ExactLikelihood.Model.PROPORTION, 200)
                    .pool(
                        IntStream.range(0, STUDIES)
                            .mapToObj(i -> new ArmCounts(i % 9, 20))
                            .toList(),
                        LikelihoodLimits.normal(0.95))),
        new Long(
            "three levels",
            () ->
                ThreeLevelModel.fit(
                    ClusteredRows.of(
                        sample(), IntStream.range(0, STUDIES).mapToObj(i -> "c" + i % 9).toList()),
                    true)),
        new Long(
            "patients with summaries",
            () ->
                BinaryModel.fit(
                    List.of(
                        new StudyEvidence<>("A", patients(0), List.of()),
                        new StudyEvidence<>("B", patients(1), List.of())),
                    0,
                    200)),
        new Long("trim and fill", StoppedWorkTest::trimAndFill),
        new Long("kappa", () -> Kappa.of(50, pairs(50, 7), (i, j) -> i == j ? 1 : 0)),
        new Long("intraclass correlation", () -> IntraclassCorrelation.of(ratings, 0.95)),
        new Long(
            "hazard ratio", () -> TwoGroups.of(List.of(times(0)), List.of(times(3))).hazardRatio()),
        new Long(
            "pooled curve",
            () -> PooledCurve.of(List.of(times(0), times(3), times(5)), List.of(5.0, 20.0), 0.95)),
        new Long(
            "rebuilt curve",
            () ->
                CurveReconstruction.of(
                    DigitisedCurve.of(List.of(new DigitisedCurve.Point(1, 0.9))),
                    NumbersAtRisk.of(1_000_000, List.of()),
                    OptionalInt.empty())));
  }

  private static Object splits(Network network) {
    return IntStream.range(0, network.treatments().size())
        .mapToObj(i -> network.split(0, i))
        .toList();
  }

  private static Object trimAndFill() {
    return new TrimAndFill(TrimAndFill.Estimator.L0, TrimAndFill.Side.LEFT, false)
        .find(new SmallStudyData(sample(), Optional.empty(), false, 0, pooling(restricted())));
  }

  private static List<Patient> patients(int shift) {
    return IntStream.range(0, 30).mapToObj(i -> new Patient((i + shift) % 2, i * 7 % 11)).toList();
  }

  private static List<Kappa.Pair> pairs(int categories, int step) {
    return IntStream.range(0, categories)
        .mapToObj(i -> new Kappa.Pair(i, i * step % categories, 1))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("whatTakesLong")
  void whatTakesLongAsksWhetherItMayGoOn(Long task) {
    Work work = Work.within(Budget.STANDARD);
    work.abandon();
    assertTrue(
        assertThrows(WorkStoppedException.class, () -> work.join(task.work())).isAbandoned());
  }

  /** An estimator that has the work ended at its n-th use and counts how often it is asked. */
  private record Ending(Work work, int after, AtomicInteger asked) implements TauSquaredEstimator {
    @Override
    public String name() {
      return restricted().name();
    }

    @Override
    public String label() {
      return restricted().label();
    }

    @Override
    public TauSquared estimate(ResidualSums sums) {
      if (asked.incrementAndGet() == after) {
        work.abandon();
      }
      return restricted().estimate(sums);
    }
  }

  @Test
  void aPermutationTestEndsInAllThreadsWhenItIsUnderWay() {
    Work work = Work.within(Budget.STANDARD);
    Ending ending = new Ending(work, 500, new AtomicInteger());
    assertThrows(
        WorkStoppedException.class,
        () ->
            work.join(
                () -> PermutationTest.of(sample(), design(), regression(ending), 100_000, 1)));
    // Those that had begun may end, one a thread; nothing new begins.
    int asked = ending.asked().get();
    assertTrue(asked < 500 + threads(), "asked " + asked + " times");
  }

  @Test
  void aMultiverseEndsInAllThreadsWhenItIsUnderWay() {
    Work work = Work.within(Budget.STANDARD);
    AtomicInteger asked = new AtomicInteger();
    Approach approach =
        new Approach() {
          @Override
          public String scale() {
            return "raw";
          }

          @Override
          public List<Settings> ways() {
            return List.of(Settings.none(1));
          }

          @Override
          public List<AnalysisFinding> findings(Subset subset) {
            if (asked.incrementAndGet() == 500) {
              work.abandon();
            }
            return List.of(new AnalysisFinding.NotEstimated("no-studies"));
          }
        };
    List<Subset> subsets =
        IntStream.range(0, 100_000)
            .mapToObj(i -> new Subset(Settings.none(1), List.of(i)))
            .toList();
    assertThrows(
        WorkStoppedException.class,
        () ->
            work.join(
                () ->
                    Multiverse.of(
                        List.of(new Choice("rows", List.of("all"))), List.of(approach), subsets)));
    // The thread that abandons may be kept waiting between the two, while others go on.
    assertTrue(asked.get() < 50_000, "asked " + asked + " times");
  }

  @Test
  void aNetworkEndsWhenItIsUnderWay() {
    Work work = Work.within(Budget.STANDARD);
    Ending ending = new Ending(work, 1, new AtomicInteger());
    assertThrows(
        WorkStoppedException.class,
        () -> work.join(() -> Network.of(network(), "t0", networkSettings(ending))));
    assertEquals(1, ending.asked().get());
  }

  /** The threads that may have passed their check before the work was ended. */
  private static int threads() {
    return Runtime.getRuntime().availableProcessors() + 2;
  }
}
