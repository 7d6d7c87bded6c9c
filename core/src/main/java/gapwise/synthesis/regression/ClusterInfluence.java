package gapwise.synthesis.regression;

import gapwise.budget.Work;
import gapwise.numeric.SymmetricMatrix;
import java.util.List;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * What the rows of one cluster do to the coefficients. With U = A'W X M, M = (X'WX)^-1 and an
 * adjustment A of the residuals e, U'e is the cluster's part in the error of the coefficients.
 *
 * <p>Bias-reduced linearisation takes A = D' B^(-1/2) D with D'D = F, the working covariance of the
 * rows, and B = D (F - X M X') D', so that the expected sandwich is M if F is right: Bell and
 * McCaffrey, Surv Methodol 2002;28:169; for any weights Pustejovsky and Tipton, J Bus Econ Stat
 * 2018;36:672, section 2. Which D is taken makes no difference; here it is the symmetric root.
 *
 * @param score U'e, one for each coefficient
 * @param variance U'F U
 * @param sums X'U, a row for each term of the design and a column for each coefficient
 */
record ClusterInfluence(double[] score, RealMatrix variance, RealMatrix sums) {
  /** Above this the cube of the rows takes longer than anyone waits. */
  static final int MOST_ROWS = 400;

  /** Of one cluster, with residuals as they are. */
  static ClusterInfluence plain(ClusteredFit fit, List<Integer> places) {
    return of(fit, places, unadjusted(fit, places));
  }

  /** Of one cluster of no more than {@link #MOST_ROWS} rows, with residuals adjusted. */
  static ClusterInfluence adjusted(ClusteredFit fit, List<Integer> places) {
    Work.check();
    RealMatrix rows = fit.rows(places);
    RealMatrix working = fit.covariance().of(places);
    RealMatrix left =
        working.subtract(rows.multiply(fit.inverseInformation()).multiply(rows.transpose()));
    RealMatrix root = SymmetricMatrix.of(working).root();
    RealMatrix inner = SymmetricMatrix.of(root.multiply(left).multiply(root)).inverseRoot();
    RealMatrix adjustment = root.multiply(inner).multiply(root);
    return of(fit, places, adjustment.multiply(unadjusted(fit, places)));
  }

  private static RealMatrix unadjusted(ClusteredFit fit, List<Integer> places) {
    return fit.covariance().inverseTimesDesign(places).multiply(fit.inverseInformation());
  }

  private static ClusterInfluence of(ClusteredFit fit, List<Integer> places, RealMatrix factors) {
    return new ClusterInfluence(
        factors.preMultiply(fit.residuals(places)),
        factors.transpose().multiply(fit.covariance().of(places)).multiply(factors),
        fit.rows(places).transpose().multiply(factors));
  }

  /**
   * The same for sums of multiples of the coefficients.
   *
   * @param multiples a row for each coefficient, a column for each sum
   */
  ClusterInfluence combined(RealMatrix multiples) {
    return new ClusterInfluence(
        multiples.preMultiply(score),
        multiples.transpose().multiply(variance).multiply(multiples),
        sums.multiply(multiples));
  }
}
