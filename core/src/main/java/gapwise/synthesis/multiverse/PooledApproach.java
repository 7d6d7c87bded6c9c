package gapwise.synthesis.multiverse;

import gapwise.effect.BackTransform;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PooledMean;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Rows pooled in one way that needs no effect of each study first: from their counts.
 *
 * @param scale its word
 * @param settings of this one way
 * @param pool pools the rows at some places
 */
public record PooledApproach(
    String scale, Settings settings, Function<List<Integer>, PooledRows> pool) implements Approach {

  /**
   * Rows pooled.
   *
   * @param pooled what came of it
   * @param back the way to what people read
   * @param studies how many were pooled
   */
  public record PooledRows(Pooled pooled, BackTransform back, int studies) {}

  @Override
  public List<Settings> ways() {
    return List.of(settings);
  }

  @Override
  public List<AnalysisFinding> findings(Subset subset) {
    PooledRows rows = pool.apply(subset.rows());
    Optional<PooledMean> mean = rows.pooled().mean();
    if (mean.isEmpty()) {
      return List.of(
          new AnalysisFinding.NotEstimated(
              rows.pooled().warnings().isEmpty()
                  ? "no-studies"
                  : rows.pooled().warnings().get(0).code()));
    }
    return List.of(AnalysisFinding.of(mean.get(), rows.back(), rows.studies()));
  }
}
