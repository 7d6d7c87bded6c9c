package gapwise.synthesis.network;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A network in which every pair of many treatments is a design of its own. */
class ManyDesignsTest {
  private static final int TREATMENTS = 60;
  private static final int DESIGNS = TREATMENTS * (TREATMENTS - 1) / 2;
  private static final double APART = 0.3;

  /** Two studies of each pair, {@link #APART} above and below the difference of the treatments. */
  private static Network network() {
    List<NetworkStudy> studies = new ArrayList<>();
    for (int i = 0; i < TREATMENTS; i++) {
      for (int j = 0; j < i; j++) {
        for (double off : new double[] {APART, -APART}) {
          studies.add(
              new NetworkStudy(
                  "s" + studies.size(),
                  List.of("t" + j, "t" + i),
                  List.of(i - j + off),
                  List.of(List.of(0.5))));
        }
      }
    }
    NetworkSettings settings =
        new NetworkSettings(
            TauSquaredEstimators.named("dersimonian-laird"),
            NetworkPredictions.Spread.UNKNOWN,
            TauSquaredInterval.Q_PROFILE,
            0.95);
    return ((Network.Fitted.Done) Network.of(studies, "t0", settings)).network();
  }

  @Test
  void effectsQAndItsPartsAreThoseOfThePattern() {
    Network network = network();
    int t7 = network.treatments().indexOf("t7");
    int t40 = network.treatments().indexOf("t40");
    // Deviations cancel in each pair, so the effects are the differences themselves. Of n
    // treatments, all pairs compared with the same precision p = 2/0.5, the information on the
    // treatments is p (n I - J), J all ones. On differences, which J does not touch, its inverse is
    // I/(n p), so a difference of two has the variance 2/(n p).
    Comparison comparison = network.comparison(t40, t7).orElseThrow();
    assertEquals(33, comparison.estimate(), 1e-9);
    assertEquals(Math.sqrt(2 / (TREATMENTS * 4.0)), comparison.standardError(), 1e-9);
    // Each study adds 0.3^2/0.5; designs agree with each other altogether.
    assertEquals(2 * DESIGNS * APART * APART / 0.5, network.qHeterogeneity().q(), 1e-6);
    assertEquals(DESIGNS, network.qHeterogeneity().degreesOfFreedom());
    assertEquals(0, network.qInconsistency().q(), 1e-9);
    assertEquals(DESIGNS - (TREATMENTS - 1), network.qInconsistency().degreesOfFreedom());
    Optional<DesignByTreatment> test = network.designByTreatment();
    assertEquals(0, test.orElseThrow().test().q(), 1e-9);
    assertEquals(DESIGNS - (TREATMENTS - 1), test.orElseThrow().test().degreesOfFreedom());
  }
}
