package gapwise.server.page.studies;

import gapwise.evidence.Study;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchAnswer.ArmHit;
import gapwise.server.home.Remembered;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Values as they were last looked up, kept for one state of the evidence base. */
final class RememberedValues implements ArmValues {
  /** A value in words takes some hundred bytes. */
  private static final int MOST = 20_000;

  private final Remembered<Asked, Optional<ArmValue>> latest;
  private final Function<Set<String>, Map<String, Study>> studies;

  private record Asked(Outcome outcome, Optional<LengthRange> lengths, ArmHit arm) {}

  /**
   * @param values looks up values anew
   */
  RememberedValues(ArmValues values, Function<Set<String>, Map<String, Study>> studies) {
    this.latest =
        new Remembered<>(
            MOST,
            asked ->
                values.of(asked.outcome(), asked.lengths(), List.of(asked.arm())).values().stream()
                    .findFirst());
    this.studies = studies;
  }

  @Override
  public Map<ArmHit, ArmValue> of(
      Outcome outcome, Optional<LengthRange> lengths, List<ArmHit> arms) {
    Map<String, Study> read =
        studies.apply(arms.stream().map(ArmHit::studyId).collect(Collectors.toSet()));
    Map<ArmHit, ArmValue> values = new HashMap<>();
    for (ArmHit arm : arms) {
      Optional<LengthRange> apart =
          lengths.filter(
              range ->
                  Optional.ofNullable(read.get(arm.studyId()))
                      .filter(RememberedValues::tellsByLength)
                      .isPresent());
      latest.of(new Asked(outcome, apart, arm)).ifPresent(value -> values.put(arm, value));
    }
    return values;
  }

  /** Other studies have one value of a group, whatever lengths are asked for. */
  private static boolean tellsByLength(Study study) {
    return !study.patients().isEmpty()
        || study.outcomes().stream().anyMatch(report -> report.subgroup().isPresent());
  }
}
