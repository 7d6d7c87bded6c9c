package gapwise.analysis.pooling;

import gapwise.effect.StudyData;
import gapwise.synthesis.pooling.PoolingSettings;
import java.util.Optional;

/** How studies are pooled: what the field {@code model} of a plan says, with its settings. */
public interface Model {
  /** The word in a plan. */
  String word();

  /** How effects are pooled and limits made. */
  PoolingSettings settings();

  /** Pools any part of these studies. */
  <D extends StudyData> Pooler pooler(Studies<D> studies);

  /** Whether a variance between studies is estimated, which is 0 for one study alone. */
  boolean hasSpread();

  /** What it means to leave a study out. */
  Deletion deletion();

  /** The column of the clusters in which rows come, if they do. */
  default Optional<String> cluster() {
    return Optional.empty();
  }

  /** What can be told of a result without each study. */
  enum Deletion {
    /** Everything: studies have weights. */
    DIAGNOSTICS,
    /** The pooled value, from sums of counts. */
    COUNTS,
    /** The pooled value, by a whole fit for each study. */
    FIT,
    /** The same, from the posterior, where tau has its own and is not told. */
    POSTERIOR
  }
}
