package gapwise.analysis;

import java.util.List;

/** The parts a synthesis can have, in the order in which their warnings are told. */
final class SynthesisParts {
  private static final List<SynthesisPart> ALL =
      List.of(
          new PooledPart(),
          new PlacesPart(),
          new RegressionPart(),
          new RobustPart(),
          new SubgroupPart(),
          new SmallStudyPart(),
          new FunnelPart(),
          new InfluencePart(),
          new CumulativePart(),
          new ThreeLevelPart(),
          new BayesianPart());

  private SynthesisParts() {}

  /** The parts a plan asks for. */
  static List<SynthesisPart> of(SynthesisPlan plan) {
    return ALL.stream().filter(part -> part.asked(plan)).toList();
  }
}
