package gapwise.synthesis.network.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import gapwise.effect.ArmCounts;
import gapwise.synthesis.likelihood.FourfoldNormal;
import gapwise.synthesis.likelihood.LikelihoodFit;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Two treatments are a pairwise synthesis by the same likelihood, whose own tests have sources. */
class ExactPairTest {
  /** Both stop within a millionth of a standard error, of some tenths here. */
  private static final double SAME = 1e-6;

  /** Rows of events and patients with the treatment, then against. Invented. */
  private static final double[][] APART = {
    {3, 40, 1, 38},
    {0, 25, 4, 26},
    {7, 60, 2, 61},
    {1, 12, 1, 14},
    {9, 33, 2, 30},
    {0, 18, 0, 20},
    {2, 51, 6, 48},
    {5, 22, 0, 21}
  };

  private static final double[][] ALIKE = {
    {4, 50, 2, 50}, {6, 40, 3, 41}, {0, 20, 1, 22}, {8, 90, 5, 95}, {3, 30, 2, 33}
  };

  private static final double[][] LARGE = {
    {130, 900, 90, 880}, {45, 1200, 70, 1230}, {300, 1500, 210, 1450}, {12, 300, 25, 310}
  };

  private static final double[][] FAR_APART = {
    {0, 30, 9, 30}, {12, 31, 0, 29}, {2, 40, 3, 42}, {15, 30, 1, 33}, {0, 21, 6, 24}
  };

  @Test
  void twoTreatmentsAreTheFourfoldTablesOfAPair() {
    for (double[][] rows : List.of(APART, ALIKE, LARGE, FAR_APART)) {
      LikelihoodFit.Estimate pair =
          assertInstanceOf(
              LikelihoodFit.Estimate.class,
              FourfoldNormal.conditional(
                  column(rows, 0), column(rows, 1), column(rows, 2), column(rows, 3), 200));
      ExactNetwork network = network(rows, true);
      ExactComparison effect = network.comparison(1, 0).orElseThrow();
      assertEquals(pair.estimate(), effect.estimate(), SAME);
      assertEquals(pair.standardError(), effect.standardError(), SAME);
      assertEquals(pair.tau(), network.tau().orElseThrow(), 1e-5);
      assertEquals(pair.logLikelihood(), network.logLikelihood(), 1e-7);
    }
  }

  static ExactNetwork network(double[][] rows, boolean random) {
    List<CountedStudy> studies = new ArrayList<>();
    for (int i = 0; i < rows.length; i++) {
      double[] row = rows[i];
      CountedStudy study =
          new CountedStudy(
              "study " + i,
              List.of("a", "b"),
              List.of(new ArmCounts(row[2], row[3]), new ArmCounts(row[0], row[1])));
      if (study.tells()) {
        studies.add(study);
      }
    }
    return assertInstanceOf(
            ExactNetwork.Fitted.Done.class,
            ExactNetwork.of(studies, "a", new ExactSettings(random, 0.95)))
        .network();
  }

  private static double[] column(double[][] rows, int place) {
    double[] column = new double[rows.length];
    for (int i = 0; i < rows.length; i++) {
      column[i] = rows[i][place];
    }
    return column;
  }
}
