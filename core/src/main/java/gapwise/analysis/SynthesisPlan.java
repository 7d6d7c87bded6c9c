package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.effect.Measure;
import gapwise.synthesis.pooling.CountPooling;
import gapwise.synthesis.pooling.PoolingSettings;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Effects of studies pooled.
 *
 * @param json with every default filled in; shared, so not to be changed
 * @param measure its name
 * @param how the measure on its scale
 * @param settings how effects are pooled
 * @param counts how counts are pooled without the effects of single studies, if they are
 * @param subgroup column of the groups, if any
 * @param commonSubgroupVariance whether groups share one variance between studies
 */
record SynthesisPlan(
    ObjectNode json,
    String measure,
    Map<String, String> columns,
    Measure<?> how,
    PoolingSettings settings,
    Optional<CountPooling> counts,
    Optional<String> subgroup,
    boolean commonSubgroupVariance)
    implements Plan {
  SynthesisPlan {
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
  }

  /** Whether a variance between studies is estimated. */
  boolean hasSpread() {
    return settings.estimator().isPresent() || ExactModels.asked(json);
  }

  /** The column of the clusters; empty text if the model has none. */
  String cluster() {
    return json.path("model").asText().equals("three-level") ? json.path("cluster").asText() : "";
  }

  @Override
  public Result runOn(DataTable table) {
    return SynthesisRun.of(this, how, table);
  }
}
