package gapwise.analysis.clusters;

import gapwise.analysis.pooling.Pooler;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.multilevel.ClusterLimits;
import gapwise.synthesis.multilevel.FurtherCluster;
import gapwise.synthesis.multilevel.ThreeLevelPooling;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Subgroups;
import java.util.List;

/**
 * Pools effects that come in clusters.
 *
 * @param clusters of each effect
 * @param restricted which likelihood
 * @param limits how limits are made
 * @param further how a further cluster is told of all, and of each subgroup
 * @param whole all of them pooled
 */
record ClusterPooler(
    EffectSample sample,
    List<String> clusters,
    boolean restricted,
    PoolingSettings settings,
    ClusterLimits limits,
    FurtherCluster further,
    ThreeLevelPooling whole)
    implements Pooler {

  /** The clusters of the rows at some places. */
  List<String> clustersAt(List<Integer> places) {
    return places.stream().map(clusters::get).toList();
  }

  @Override
  public int size() {
    return sample.size();
  }

  @Override
  public Pooled all() {
    return whole.pooled();
  }

  @Override
  public Pooled at(List<Integer> places) {
    return at(places, FurtherCluster.UNASKED);
  }

  private Pooled at(List<Integer> places, FurtherCluster asked) {
    return ThreeLevelPooling.of(
            sample.at(places), clustersAt(places), restricted, settings, limits, asked)
        .pooled();
  }

  @Override
  public Subgroups subgroups(List<String> levels, boolean common) {
    return Subgroups.apart(levels, places -> at(places, further));
  }
}
