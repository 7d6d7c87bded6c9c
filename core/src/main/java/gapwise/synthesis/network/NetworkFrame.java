package gapwise.synthesis.network;

import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.network.NetworkMeans.NetworkFit;
import java.util.List;
import java.util.Optional;

/** Studies with the forest that spans them and the rows they become. */
final class NetworkFrame {
  private final List<NetworkStudy> studies;
  private final TreatmentIndex index;
  private final SpanningForest forest;
  private final EffectSample sample;
  private final NetworkMeans model;
  private final double logDeterminantOfS;

  private NetworkFrame(
      List<NetworkStudy> studies, TreatmentIndex index, SpanningForest forest, NetworkRows rows) {
    this.studies = List.copyOf(studies);
    this.index = index;
    this.forest = forest;
    this.sample = rows.sample();
    this.model = new NetworkMeans(forest.parameters(), rows.design());
    this.logDeterminantOfS = rows.logDeterminantOfS();
  }

  /** The frame of studies; empty if {@link NetworkRows} cannot be made of them. */
  static Optional<NetworkFrame> of(List<NetworkStudy> studies, TreatmentIndex index) {
    SpanningForest forest = SpanningForest.of(index.size(), studies, index);
    return NetworkRows.of(studies, index, forest)
        .map(rows -> new NetworkFrame(studies, index, forest, rows));
  }

  List<NetworkStudy> studies() {
    return studies;
  }

  TreatmentIndex index() {
    return index;
  }

  SpanningForest forest() {
    return forest;
  }

  EffectSample sample() {
    return sample;
  }

  NetworkMeans model() {
    return model;
  }

  /** Rows less parameters. */
  int degreesOfFreedom() {
    return sample.size() - model.parameters();
  }

  NetworkFit fitAt(double tauSquared) {
    return model.fitAt(sample, tauSquared);
  }

  /** Log likelihood of the contrasts with all constants but log det(X'X)/2. */
  double logLikelihood(double tauSquared, boolean restricted) {
    return -(fitAt(tauSquared).minusTwiceLogLikelihood(restricted) + logDeterminantOfS) / 2;
  }

  /** One treatment less another of its piece, as parameters. */
  SparseRow contrast(int one, int other) {
    return SparseRow.of(forest.path(one, other));
  }
}
