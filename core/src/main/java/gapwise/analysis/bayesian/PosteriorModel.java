package gapwise.analysis.bayesian;

import gapwise.analysis.pooling.Model;

/** A model whose results are posteriors, whatever its likelihood. */
interface PosteriorModel extends Model {
  @Override
  default String word() {
    return "bayesian";
  }

  /** Tau has a posterior and no estimate. */
  @Override
  default boolean hasSpread() {
    return false;
  }

  @Override
  default Deletion deletion() {
    return Deletion.POSTERIOR;
  }
}
