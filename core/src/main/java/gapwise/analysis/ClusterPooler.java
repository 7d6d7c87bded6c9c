package gapwise.analysis;

import gapwise.effect.StudyData;
import gapwise.synthesis.multilevel.ThreeLevelPooling;
import gapwise.synthesis.pooling.EffectSample;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Subgroups;
import java.util.List;

/**
 * Pools effects that come in clusters.
 *
 * @param clusters of each effect
 * @param restricted which likelihood
 * @param whole all of them pooled
 */
record ClusterPooler(
    EffectSample sample,
    List<String> clusters,
    boolean restricted,
    PoolingSettings settings,
    ThreeLevelPooling whole)
    implements Pooler {

  /** The way of a plan whose model is {@code three-level}. */
  static <D extends StudyData> ClusterPooler of(SynthesisPlan plan, Studies<D> studies) {
    EffectSample sample = studies.sample();
    List<String> clusters = clusters(plan, studies);
    boolean restricted =
        plan.json().path("betweenStudyVariance").asText().equals("restricted-maximum-likelihood");
    return new ClusterPooler(
        sample,
        clusters,
        restricted,
        plan.settings(),
        ThreeLevelPooling.of(sample, clusters, restricted, plan.settings()));
  }

  private static <D extends StudyData> List<String> clusters(
      SynthesisPlan plan, Studies<D> studies) {
    return studies.pooled().stream().map(entry -> entry.row().text(plan.cluster())).toList();
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
    return ThreeLevelPooling.of(
            sample.at(places), places.stream().map(clusters::get).toList(), restricted, settings)
        .pooled();
  }

  @Override
  public Subgroups subgroups(List<String> levels, boolean common) {
    return Subgroups.apart(levels, this::at);
  }
}
