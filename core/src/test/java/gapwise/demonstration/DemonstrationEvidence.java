package gapwise.demonstration;

import gapwise.evidence.Study;
import java.util.List;
import java.util.stream.Stream;

/**
 * The invented studies. The same seed gives the same records on every machine; every study has its
 * own streams of chance, so one may be added without changing another.
 */
public final class DemonstrationEvidence {
  /**
   * Where all chance starts. Of several seeds tried, one whose counts of events lie in the middle,
   * so that the drawn evidence looks like the truth behind it.
   */
  public static final long SEED = 20261125L;

  private DemonstrationEvidence() {}

  /** All studies in the order of their numbers. */
  public static List<Study> studies() {
    return studies(SEED);
  }

  /** The same studies with other chance: other patients, the same habits of reporting. */
  public static List<Study> studies(long seed) {
    return plans().stream().map(plan -> StudyAssembly.study(plan, seed)).toList();
  }

  static List<StudyPlan> plans() {
    return Stream.of(
            FramePlans.all(),
            MembranePlans.all(),
            GraftPlans.all(),
            OtherPlans.all(),
            ComparisonPlans.all())
        .flatMap(List::stream)
        .toList();
  }
}
