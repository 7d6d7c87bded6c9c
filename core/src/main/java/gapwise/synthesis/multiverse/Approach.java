package gapwise.synthesis.multiverse;

import java.util.List;

/**
 * A way of reading the rows (a scale and a rule for zero cells, or the counts as they are) together
 * with the ways in which it is then pooled.
 */
public interface Approach {
  /** The word of the scale on which it pools. */
  String scale();

  /** The settings of each way of pooling, those of the reading among them. */
  List<Settings> ways();

  /** What each way finds in some of the rows, in the order of {@link #ways}. */
  List<AnalysisFinding> findings(Subset subset);
}
