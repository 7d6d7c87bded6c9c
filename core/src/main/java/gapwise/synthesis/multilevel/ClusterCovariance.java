package gapwise.synthesis.multilevel;

import gapwise.synthesis.regression.ClusteredFit;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;

/** The covariance that three levels give the rows of one cluster. */
final class ClusterCovariance implements ClusteredFit.WorkingCovariance {
  private final ThreeLevelFit fit;
  private final double[][] weightedDesign;

  ClusterCovariance(ThreeLevelFit fit) {
    this.fit = fit;
    this.weightedDesign = fit.weightedDesign();
  }

  @Override
  public RealMatrix of(List<Integer> places) {
    RealMatrix covariance = new Array2DRowRealMatrix(places.size(), places.size());
    for (int i = 0; i < places.size(); i++) {
      for (int j = 0; j < places.size(); j++) {
        covariance.setEntry(i, j, fit.rowCovariance(places.get(i), i == j));
      }
    }
    return covariance;
  }

  @Override
  public RealMatrix inverseTimesDesign(List<Integer> places) {
    RealMatrix product = new Array2DRowRealMatrix(places.size(), weightedDesign[0].length);
    for (int i = 0; i < places.size(); i++) {
      product.setRow(i, weightedDesign[places.get(i)]);
    }
    return product;
  }
}
