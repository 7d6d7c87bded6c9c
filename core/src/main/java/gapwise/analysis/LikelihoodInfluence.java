package gapwise.analysis;

import gapwise.effect.Interval;
import gapwise.synthesis.pooling.PooledValue;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The exact likelihood again without each study. Deletion diagnostics are those of a weighted mean
 * and have no meaning here.
 */
final class LikelihoodInfluence {
  private LikelihoodInfluence() {}

  static InfluenceResult of(Pooler pooler, List<String> labels) {
    List<InfluenceResult.Omitted> omitted = new ArrayList<>();
    for (int i = 0; i < labels.size(); i++) {
      int out = i;
      Refit rest =
          new Refit(
              PooledValue.of(
                  pooler.at(
                      IntStream.range(0, labels.size()).filter(j -> j != out).boxed().toList()),
                  labels.size() - 1),
              true);
      omitted.add(
          new InfluenceResult.Omitted(
              labels.get(i),
              rest.estimate(),
              rest.standardError(),
              rest.limit(Interval::lower),
              rest.limit(Interval::upper),
              rest.tauSquared(),
              rest.pooled().q()));
    }
    return new InfluenceResult(omitted, List.of(), List.of());
  }
}
