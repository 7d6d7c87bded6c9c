package gapwise.synthesis.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Networks so small that what they come to is known in closed form. */
class NetworkTest {
  private static final NetworkSettings COMMON =
      new NetworkSettings(
          Optional.empty(), NetworkPredictions.Spread.UNKNOWN, TauSquaredInterval.Q_PROFILE, 0.95);

  private static NetworkStudy study(String one, String other, double effect, double variance) {
    return new NetworkStudy(
        other + " less " + one, List.of(one, other), List.of(effect), List.of(List.of(variance)));
  }

  private static Network network(NetworkSettings settings, NetworkStudy... studies) {
    return assertInstanceOf(Network.Fitted.Done.class, Network.of(List.of(studies), "a", settings))
        .network();
  }

  private static Comparison comparison(Network network, String one, String other) {
    return network
        .comparison(network.treatments().indexOf(one), network.treatments().indexOf(other))
        .orElseThrow();
  }

  /** Three studies, one of each pair; going round the triangle the effects miss 0 by 0.6. */
  private static Network triangle() {
    return network(
        COMMON, study("a", "b", 1, 0.3), study("b", "c", 2, 0.3), study("a", "c", 3.6, 0.3));
  }

  @Test
  void twoTreatmentsNeverComparedAreJoinedByTheThird() {
    // Bucher et al., J Clin Epidemiol 1997;50:683: effects subtract, variances add.
    Network network = network(COMMON, study("a", "b", 1, 0.2), study("a", "c", 3, 0.3));
    assertEquals(2, comparison(network, "c", "b").estimate(), 1e-14);
    assertEquals(Math.sqrt(0.5), comparison(network, "c", "b").standardError(), 1e-14);
  }

  @Test
  void aTriangleOfEqualStudiesWeighsTheDirectTwiceTheIndirect() {
    // The indirect way has twice the variance: (2 x 3.6 + 3)/3, and 0.3 x 2/3.
    assertEquals(3.4, comparison(triangle(), "c", "a").estimate(), 1e-14);
    assertEquals(Math.sqrt(0.2), comparison(triangle(), "c", "a").standardError(), 1e-14);
  }

  @Test
  void effectsOfATriangleAddUp() {
    Network network = triangle();
    assertEquals(
        comparison(network, "c", "a").estimate(),
        comparison(network, "c", "b").estimate() + comparison(network, "b", "a").estimate(),
        1e-14);
  }

  @Test
  void aTriangleThatDoesNotCloseIsInconsistentByTheSquareOfWhatItMisses() {
    // One degree of freedom: 0.6^2 over the sum of the three variances.
    Network network = triangle();
    assertEquals(0.36 / 0.9, network.heterogeneity().q().q(), 1e-14);
    assertEquals(0.36 / 0.9, network.qInconsistency().q(), 1e-14);
    assertEquals(1, network.qInconsistency().degreesOfFreedom());
    assertEquals(new ChiSquaredTest(0, 0), network.qHeterogeneity());
  }

  @Test
  void directAndIndirectOfATriangleAreItsTwoWays() {
    Network network = triangle();
    Split split =
        network
            .split(network.treatments().indexOf("c"), network.treatments().indexOf("a"))
            .orElseThrow();
    assertEquals(3.6, split.direct().estimate(), 1e-13);
    assertEquals(3, split.indirect().estimate(), 1e-13);
    assertEquals(Math.sqrt(0.6), split.indirect().standardError(), 1e-13);
    assertEquals(0.6, split.difference().estimate(), 1e-13);
    assertEquals(Math.sqrt(0.9), split.difference().standardError(), 1e-13);
  }

  @Test
  void aPairWithoutAnIndirectWayIsNotParted() {
    Network network = network(COMMON, study("a", "b", 1, 0.2), study("a", "c", 3, 0.3));
    assertTrue(network.split(0, 1).isEmpty());
  }

  @Test
  void oneStudyOfThreeArmsIsToldAsItIs() {
    // var(c - b) = 0.5 + 0.6 - 2 x 0.2.
    Network network =
        network(
            COMMON,
            new NetworkStudy(
                "three",
                List.of("a", "b", "c"),
                List.of(1.0, 4.0),
                List.of(List.of(0.5, 0.2), List.of(0.2, 0.6))));
    assertEquals(3, comparison(network, "c", "b").estimate(), 1e-14);
    assertEquals(Math.sqrt(0.7), comparison(network, "c", "b").standardError(), 1e-14);
    assertEquals(new ChiSquaredTest(0, 0), network.heterogeneity().q());
  }

  @Test
  void oneComparisonIsPooledAsADirectMetaAnalysis() {
    // DerSimonian and Laird, Control Clin Trials 1986;7:177: effects 1 and 3, variances 1:
    // Q = 2, t = (2 - 1)/(2 - 2/2) = 1, mean 2 with variance (1 + 1)/2.
    Network network =
        network(
            new NetworkSettings(
                TauSquaredEstimators.named("dersimonian-laird"),
                NetworkPredictions.Spread.UNKNOWN,
                TauSquaredInterval.Q_PROFILE,
                0.95),
            study("a", "b", 1, 1),
            study("a", "b", 3, 1));
    assertEquals(1, network.heterogeneity().tauSquared().orElseThrow().value(), 1e-14);
    assertEquals(2, comparison(network, "b", "a").estimate(), 1e-14);
    assertEquals(1, comparison(network, "b", "a").standardError(), 1e-14);
    assertEquals(0.5, network.heterogeneity().iSquared().orElseThrow(), 1e-14);
  }

  @Test
  void piecesThatNoStudyJoinsAreNotCompared() {
    Network network = network(COMMON, study("a", "b", 1, 1), study("c", "d", 1, 1));
    assertEquals(List.of(List.of("a", "b"), List.of("c", "d")), network.pieces());
    assertEquals(Optional.empty(), network.comparison(0, 2));
    assertEquals(Optional.empty(), network.ranking(true, new RankDraws(1, 10)));
  }

  @Test
  void theOrderOfTreatmentsInAStudyChangesNothing() {
    Network turned =
        network(
            COMMON, study("b", "a", -1, 0.3), study("b", "c", 2, 0.3), study("c", "a", -3.6, 0.3));
    assertEquals(
        comparison(triangle(), "c", "b").estimate(),
        comparison(turned, "c", "b").estimate(),
        1e-14);
  }

  @Test
  void aStudyWithoutVarianceIsRefused() {
    Network.Fitted fitted = Network.of(List.of(study("a", "b", 1, 0)), "a", COMMON);
    assertEquals("zero-variance", assertInstanceOf(Network.Fitted.Not.class, fitted).why().code());
  }

  @Test
  void fourTimesTheStudiesHalveTheError() {
    List<NetworkStudy> studies = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      studies.add(study("a", "b", 1, 0.3));
      studies.add(study("b", "c", 2, 0.3));
      studies.add(study("a", "c", 3.6, 0.3));
    }
    Network four = network(COMMON, studies.toArray(new NetworkStudy[0]));
    assertEquals(3.4, comparison(four, "c", "a").estimate(), 1e-13);
    assertEquals(Math.sqrt(0.2) / 2, comparison(four, "c", "a").standardError(), 1e-14);
  }
}
