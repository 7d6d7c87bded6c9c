package gapwise.analysis.pooling;

import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.Subgroups;
import java.util.List;
import java.util.stream.IntStream;

/** Pools any part of some studies in the way of a {@link Model}. */
public interface Pooler {
  /** Number of studies that can be pooled. */
  int size();

  /** Pools the studies at some places. */
  Pooled at(List<Integer> places);

  /** Pools each group of studies and compares them. */
  Subgroups subgroups(List<String> levels, boolean common);

  /** Pools all. */
  default Pooled all() {
    return at(IntStream.range(0, size()).boxed().toList());
  }
}
