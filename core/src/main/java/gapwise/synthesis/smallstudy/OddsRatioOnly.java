package gapwise.synthesis.smallstudy;

import gapwise.effect.TwoByTwo;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** What the two tests made for odds ratios share. */
final class OddsRatioOnly {
  private OddsRatioOnly() {}

  /** Why the test cannot be made of this measure; empty if it can. */
  static Optional<Refusal> refusal(SmallStudyData data) {
    return data.tables().isPresent() ? Optional.empty() : Optional.of(new Refusal.NotForMeasure());
  }

  /** Places of the studies with some but not only events. */
  static List<Integer> informative(List<TwoByTwo> tables) {
    return IntStream.range(0, tables.size())
        .filter(i -> tables.get(i).hypergeometricVariance() > 0)
        .boxed()
        .toList();
  }
}
