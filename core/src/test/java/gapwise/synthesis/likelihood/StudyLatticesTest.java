package gapwise.synthesis.likelihood;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

final class StudyLatticesTest {
  private static final StudyLikelihoods SERIES =
      new BinomialLikelihoods(
          new double[] {0, 3, 19, 12, 700}, new double[] {8, 7, 60, 12, 1000}, new double[5]);

  @Test
  void isAtLeastAsFineAsWantedAndHardlyFiner() {
    StudyLattices lattices = StudyLattices.shared(SERIES, 1);
    for (double wanted = 1e-4; wanted < 3; wanted *= 1.07) {
      double step = lattices.of(wanted, 0).step();
      assertTrue(step <= wanted && step > wanted / 1.27, step + " for " + wanted);
    }
  }

  @Test
  void halfAStepIsHalfOfIt() {
    StudyLattices lattices = StudyLattices.shared(SERIES, 1);
    for (double wanted = 1e-3; wanted < 3; wanted *= 1.3) {
      double step = lattices.of(wanted, 0).step();
      assertEquals(step / 2, lattices.of(step / 2, 0).step());
    }
  }

  @Test
  void nearStepsShareALattice() {
    StudyLattices lattices = StudyLattices.shared(SERIES, 1);
    assertSame(lattices.of(0.55, -1), lattices.of(0.53, 2));
  }

  /** Whatever was asked before, and far from where it was asked. */
  @Test
  void sharedLatticesGiveWhatFreshOnesDo() {
    for (int study = 0; study < SERIES.size(); study++) {
      StudyLattices shared = StudyLattices.shared(SERIES, study);
      for (double tau : new double[] {0.9, 0.011, 0.9, 0.2, 3, 0.21, 0.19, 0.012}) {
        StudyConvolution one = new StudyConvolution(SERIES, study, tau, shared);
        for (double mean : new double[] {-40, 6, -3, 0.3, 2, 80}) {
          double fresh = new StudyConvolution(SERIES, study, tau).log(mean);
          assertEquals(
              fresh, one.log(mean), 2e-8 * Math.max(1, Math.abs(fresh)), tau + ", " + mean);
        }
      }
    }
  }
}
