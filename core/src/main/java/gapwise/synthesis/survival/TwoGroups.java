package gapwise.synthesis.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One group set against another, within one or several strata such as studies: risk sets are never
 * mixed across strata. Immutable.
 */
public final class TwoGroups {
  private final List<PairedRisk> table;

  private TwoGroups(List<PairedRisk> table) {
    this.table = table;
  }

  /**
   * Within strata.
   *
   * @param groups one a stratum
   * @param against as many, in the same order
   */
  public static TwoGroups of(List<PatientTimes> groups, List<PatientTimes> against) {
    if (groups.size() != against.size()) {
      throw new IllegalArgumentException(
          groups.size() + " groups set against " + against.size() + " others");
    }
    List<PairedRisk> table = new ArrayList<>();
    for (int i = 0; i < groups.size(); i++) {
      table.addAll(PairedRisk.of(groups.get(i), against.get(i)));
    }
    return new TwoGroups(List.copyOf(table));
  }

  /** The hazard ratio by Cox's model with Efron's ties. */
  public HazardRatio hazardRatio() {
    return new EfronLikelihood(table).maximum();
  }

  /** The log-rank test; empty if the groups were never at risk together when an event came. */
  public Optional<LogRank> logRank() {
    return LogRank.of(table);
  }
}
