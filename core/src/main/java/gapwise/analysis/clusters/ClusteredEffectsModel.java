package gapwise.analysis.clusters;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.pooling.Model;
import gapwise.analysis.pooling.Pooler;
import gapwise.analysis.pooling.Studies;
import gapwise.effect.StudyData;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.multilevel.ClusterLimits;
import gapwise.synthesis.multilevel.FurtherCluster;
import gapwise.synthesis.multilevel.ThreeLevelPooling;
import gapwise.synthesis.pooling.PoolingSettings;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Effects that come in clusters, with a variance between clusters and one within them.
 *
 * @param column of the clusters
 * @param restricted which likelihood
 * @param limits how limits are made
 * @param further how a further cluster is told
 */
public record ClusteredEffectsModel(
    String column,
    boolean restricted,
    PoolingSettings settings,
    ClusterLimits limits,
    FurtherCluster further)
    implements Model {
  /** The model of a checked plan whose defaults are filled in. */
  public static ClusteredEffectsModel of(ObjectNode full, PoolingSettings settings) {
    String field = full.has("moderators") ? "moderatorTest" : "interval";
    String limits = full.get(field).asText();
    return new ClusteredEffectsModel(
        full.path("cluster").asText(),
        full.get("betweenStudyVariance").asText().equals("restricted-maximum-likelihood"),
        settings,
        ClusterLimits.valueOf(constant(limits)),
        full.has("predictionInterval")
            ? FurtherCluster.valueOf(constant(full.get("predictionInterval").asText()))
            : FurtherCluster.UNASKED);
  }

  private static String constant(String word) {
    return word.toUpperCase(Locale.ROOT).replace('-', '_');
  }

  @Override
  public String word() {
    return "three-level";
  }

  @Override
  public Optional<String> cluster() {
    return Optional.of(column);
  }

  /** Its two variances are told apart from this. */
  @Override
  public boolean hasSpread() {
    return false;
  }

  @Override
  public Deletion deletion() {
    return Deletion.FIT;
  }

  @Override
  public <D extends StudyData> Pooler pooler(Studies<D> studies) {
    return clusters(studies);
  }

  /** The same, with what it says of clusters. */
  <D extends StudyData> ClusterPooler clusters(Studies<D> studies) {
    EffectSample sample = studies.sample();
    List<String> clusters =
        studies.pooled().stream().map(entry -> entry.row().text(column)).toList();
    return new ClusterPooler(
        sample,
        clusters,
        restricted,
        settings,
        limits,
        further,
        ThreeLevelPooling.of(sample, clusters, restricted, settings, limits, further));
  }
}
