package gapwise.synthesis.multiverse;

import java.util.List;
import java.util.function.Function;

/**
 * Rows analysed in one way that finds its value by itself.
 *
 * @param scale its word
 * @param settings of this one way
 * @param find what it finds in the rows at some places
 */
public record FoundApproach(
    String scale, Settings settings, Function<List<Integer>, AnalysisFinding> find)
    implements Approach {
  @Override
  public List<Settings> ways() {
    return List.of(settings);
  }

  @Override
  public List<AnalysisFinding> findings(Subset subset) {
    return List.of(find.apply(subset.rows()));
  }
}
