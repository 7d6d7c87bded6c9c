package gapwise.synthesis.pooling;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The heart of what pooling gave, without what grows with the number of studies, so that as many
 * can be held as there are studies.
 *
 * @param studies how many entered
 * @param mean empty if it cannot be estimated
 * @param modelStandardError of the mean from the sum of weights, whatever the interval's method
 * @param tauSquared empty for a common effect, or for one study
 * @param q Cochran's Q
 */
public record PooledValue(
    int studies,
    Optional<PooledMean> mean,
    OptionalDouble modelStandardError,
    OptionalDouble tauSquared,
    OptionalDouble q) {

  /** The heart of a pooling of so many studies. */
  public static PooledValue of(Pooled pooled, int studies) {
    return new PooledValue(
        studies,
        pooled.mean(),
        pooled.modelStandardError(),
        pooled.heterogeneity().tauSquared(),
        pooled.heterogeneity().q());
  }
}
