package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.effect.GivenEffect;
import gapwise.effect.Measure;
import gapwise.effect.MultiArmMeasure;
import gapwise.synthesis.network.NetworkSettings;
import gapwise.synthesis.network.RankDraws;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Treatments compared through a network of studies, whose rows are arms or contrasts.
 *
 * @param json with every default filled in; shared, so not to be changed
 * @param measure its name
 * @param arms how rows of arms become effects; empty if rows are contrasts
 * @param contrasts how rows of contrasts are read; empty if rows are arms
 * @param reference the treatment others are set against; empty for the first by alphabet
 * @param higherIsBetter for the ranking
 */
record NetworkPlan(
    ObjectNode json,
    String measure,
    Map<String, String> columns,
    Optional<MultiArmMeasure<?>> arms,
    Optional<Measure<GivenEffect>> contrasts,
    NetworkSettings settings,
    Optional<String> reference,
    boolean higherIsBetter,
    RankDraws draws)
    implements Plan {
  NetworkPlan {
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
    if (arms.isPresent() == contrasts.isPresent()) {
      throw new IllegalArgumentException("rows are either arms or contrasts");
    }
  }

  @Override
  public Result runOn(DataTable table) {
    return NetworkRun.of(this, table);
  }
}
