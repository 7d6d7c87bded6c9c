package gapwise.place;

import gapwise.evidence.vocabulary.Phase;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a case of a method usually has: offered to whoever enters one, and never a part of it.
 *
 * @param milestones those that most groups report, in the order of the list of milestones
 * @param phases those that most groups report, in the order of the vocabulary; never the time in
 *     the frame as a whole beside a part of it
 * @param milestoneHints what groups report of a milestone, where any does; of further ones too
 * @param phaseHints the same of a phase
 */
public record UsualCourse(
    List<Milestone> milestones,
    List<Phase> phases,
    Map<Milestone, String> milestoneHints,
    Map<Phase, String> phaseHints) {
  /** Nothing to offer. */
  public static final UsualCourse NONE = new UsualCourse(List.of(), List.of(), Map.of(), Map.of());

  public UsualCourse {
    milestones = List.copyOf(milestones);
    phases = List.copyOf(phases);
    milestoneHints = Map.copyOf(milestoneHints);
    phaseHints = Map.copyOf(phaseHints);
  }

  /** What groups report of a milestone; empty where none does. */
  public Optional<String> hint(Milestone milestone) {
    return Optional.ofNullable(milestoneHints.get(milestone));
  }

  /** What groups report of a phase; empty where none does. */
  public Optional<String> hint(Phase phase) {
    return Optional.ofNullable(phaseHints.get(phase));
  }

  /** Of no group. */
  static UsualCourse unreported(boolean frame) {
    return new UsualCourse(
        UsualCourses.commonMilestones(frame),
        UsualCourses.commonPhases(frame),
        new EnumMap<>(Milestone.class),
        new EnumMap<>(Phase.class));
  }
}
