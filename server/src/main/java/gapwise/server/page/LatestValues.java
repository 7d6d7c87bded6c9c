package gapwise.server.page;

import gapwise.evidence.LengthRange;
import gapwise.evidence.Outcome;
import gapwise.evidence.Study;
import gapwise.search.SearchAnswer.ArmHit;
import gapwise.server.home.Latest;
import gapwise.wording.Values;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;

/** Values as they were last looked up, kept until the evidence base changes. */
final class LatestValues implements ArmValues {
  /** A value in words takes some hundred bytes. */
  private static final int MOST = 20_000;

  private final Latest<Asked, Optional<Values>> latest;
  private final Function<Set<String>, Map<String, Study>> studies;
  private final LongSupplier change;

  private record Asked(Outcome outcome, Optional<LengthRange> lengths, ArmHit arm) {}

  /**
   * @param values looks up values anew
   * @param change number of the last change that is shown
   */
  LatestValues(
      ArmValues values, Function<Set<String>, Map<String, Study>> studies, LongSupplier change) {
    this.latest =
        new Latest<>(
            MOST,
            asked ->
                values.of(asked.outcome(), asked.lengths(), List.of(asked.arm())).values().stream()
                    .findFirst());
    this.studies = studies;
    this.change = change;
  }

  @Override
  public Map<ArmHit, Values> of(Outcome outcome, Optional<LengthRange> lengths, List<ArmHit> arms) {
    long now = change.getAsLong();
    Map<String, Study> read =
        studies.apply(arms.stream().map(ArmHit::studyId).collect(Collectors.toSet()));
    Map<ArmHit, Values> values = new HashMap<>();
    for (ArmHit arm : arms) {
      Optional<LengthRange> apart =
          lengths.filter(
              range ->
                  Optional.ofNullable(read.get(arm.studyId()))
                      .filter(LatestValues::tellsByLength)
                      .isPresent());
      latest.at(now, new Asked(outcome, apart, arm)).ifPresent(value -> values.put(arm, value));
    }
    return values;
  }

  /** Other studies have one value of a group, whatever lengths are asked for. */
  private static boolean tellsByLength(Study study) {
    return !study.patients().isEmpty()
        || study.outcomes().stream().anyMatch(report -> report.subgroup().isPresent());
  }
}
