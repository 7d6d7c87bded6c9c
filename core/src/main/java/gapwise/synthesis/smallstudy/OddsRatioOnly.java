package gapwise.synthesis.smallstudy;

import gapwise.effect.TwoByTwo;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** What the two tests made for odds ratios share. */
final class OddsRatioOnly {
  private OddsRatioOnly() {}

  /** A test on tables that can be used. */
  interface OnTables {
    /**
     * What it finds.
     *
     * @param tables of all studies
     * @param used places of those with some but not only events, enough of them
     */
    AsymmetryFinding find(List<TwoByTwo> tables, List<Integer> used);
  }

  /** Makes a test, or says why it cannot be made of this measure or of these studies. */
  static AsymmetryFinding test(SmallStudyData data, OnTables test) {
    List<TwoByTwo> tables = data.tables().orElse(List.of());
    List<Integer> used = informative(tables);
    return refusal(data)
        .or(data::unusable)
        .or(() -> SmallStudyData.tooFew(used.size()))
        .<AsymmetryFinding>map(AsymmetryFinding.Refused::new)
        .orElseGet(() -> test.find(tables, used));
  }

  /** Why the test cannot be made of this measure; empty if it can. */
  private static Optional<Refusal> refusal(SmallStudyData data) {
    return data.tables().isPresent() ? Optional.empty() : Optional.of(new Refusal.NotForMeasure());
  }

  /** Places of the studies with some but not only events. */
  private static List<Integer> informative(List<TwoByTwo> tables) {
    return IntStream.range(0, tables.size())
        .filter(i -> tables.get(i).hypergeometricVariance() > 0)
        .boxed()
        .toList();
  }
}
