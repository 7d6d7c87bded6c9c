package gapwise.analysis.pooling;

import gapwise.budget.Work;
import gapwise.synthesis.pooling.PooledValue;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The exact likelihood, or the posterior, again without each study. Deletion diagnostics are those
 * of a weighted mean and have no meaning here. Takes a whole fit for each study.
 */
final class LikelihoodInfluence {
  private LikelihoodInfluence() {}

  static List<PooledValue> withoutEach(Pooler pooler) {
    List<PooledValue> rest = new ArrayList<>();
    for (int i = 0; i < pooler.size(); i++) {
      Work.check();
      int out = i;
      List<Integer> places =
          IntStream.range(0, pooler.size()).filter(j -> j != out).boxed().toList();
      rest.add(PooledValue.of(pooler.withoutFurther(places), places.size()));
    }
    return rest;
  }
}
