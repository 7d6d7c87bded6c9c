package gapwise.analysis.pooling;

import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.Subgroups;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Pools any part of some studies in the way of a {@link Model}. */
public interface Pooler {
  /** Number of studies that can be pooled. */
  int size();

  /** Pools the studies at some places. */
  Pooled at(List<Integer> places);

  /** The same where many values are pooled and none tells of a further study. */
  default Pooled withoutFurther(List<Integer> places) {
    return at(places);
  }

  /** Pools each group of studies and compares them. */
  Subgroups subgroups(List<String> levels, boolean common);

  /**
   * What the model says of the true values of further studies, after studies at some places.
   *
   * @param pooled what pooling these gave
   * @return empty where the model, or so few studies, say nothing of it
   */
  default Optional<Further> further(List<Integer> places, Pooled pooled) {
    return Optional.empty();
  }

  /** A distribution of true values of further studies, on the analysis scale. */
  @FunctionalInterface
  interface Further {
    /** The share of them, from 0 to 1, that lies below a value. */
    double below(double value);
  }

  /** Pools all. */
  default Pooled all() {
    return at(IntStream.range(0, size()).boxed().toList());
  }
}
