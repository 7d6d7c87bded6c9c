package gapwise.server.page.studies;

import gapwise.evidence.Study;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchAnswer.ArmHit;
import gapwise.server.home.RememberedEach;
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

  private final ArmValues values;
  private final RememberedEach<Asked, ArmValue> latest = new RememberedEach<>(MOST, this::lookedUp);
  private final RememberedEach<String, Boolean> byLength;

  private record Asked(Outcome outcome, Optional<LengthRange> lengths, ArmHit arm) {}

  /**
   * @param values looks up values anew
   */
  RememberedValues(ArmValues values, Function<Set<String>, Map<String, Study>> studies) {
    this.values = values;
    this.byLength =
        new RememberedEach<>(
            MOST,
            ids ->
                studies.apply(Set.copyOf(ids)).values().stream()
                    .collect(Collectors.toMap(Study::id, RememberedValues::tellsByLength)));
  }

  @Override
  public Map<ArmHit, ArmValue> of(
      Outcome outcome, Optional<LengthRange> lengths, List<ArmHit> arms) {
    Set<String> apart = lengths.isEmpty() ? Set.of() : byLength(arms);
    List<Asked> asked =
        arms.stream()
            .map(
                arm ->
                    new Asked(outcome, lengths.filter(any -> apart.contains(arm.studyId())), arm))
            .toList();
    return byArm(latest.of(asked));
  }

  /** Those of the studies of some arms that tell by length. */
  private Set<String> byLength(List<ArmHit> arms) {
    Map<String, Boolean> known =
        byLength.of(arms.stream().map(ArmHit::studyId).collect(Collectors.toSet()));
    return known.keySet().stream()
        .filter(id -> known.getOrDefault(id, false))
        .collect(Collectors.toSet());
  }

  /** Other studies have one value of a group, whatever lengths are asked for. */
  private static boolean tellsByLength(Study study) {
    return !study.patients().isEmpty()
        || study.outcomes().stream().anyMatch(report -> report.subgroup().isPresent());
  }

  /** Those of one list, so all of the same outcome, of any lengths or of those asked for. */
  private Map<Asked, ArmValue> lookedUp(List<Asked> asked) {
    Map<Asked, ArmValue> found = new HashMap<>();
    asked.stream()
        .collect(Collectors.groupingBy(Asked::lengths))
        .forEach(
            (lengths, some) -> {
              Outcome outcome = some.get(0).outcome();
              values
                  .of(outcome, lengths, some.stream().map(Asked::arm).toList())
                  .forEach((arm, value) -> found.put(new Asked(outcome, lengths, arm), value));
            });
    return found;
  }

  private static Map<ArmHit, ArmValue> byArm(Map<Asked, ArmValue> known) {
    Map<ArmHit, ArmValue> values = new HashMap<>();
    known.forEach((asked, value) -> values.put(asked.arm(), value));
    return values;
  }
}
