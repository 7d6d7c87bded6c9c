package gapwise.evidence;

import gapwise.evidence.vocabulary.YesOrNo;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Infection of an arm at the start, from whatever a paper gives of it: the one source of filters,
 * lists, alerts and moderators.
 *
 * @param atStart yes when all were infected, no when none was, mixed when some were; empty where
 *     nothing is said
 * @param share infected, 0 to 1; empty where it is not known
 * @param count so many of so many; empty where it is not known
 */
public record ArmInfection(
    Optional<YesOrNo> atStart, Optional<Double> share, Optional<EventCount> count) {
  private static final ArmInfection UNKNOWN =
      new ArmInfection(Optional.empty(), Optional.empty(), Optional.empty());

  public ArmInfection {
    Objects.requireNonNull(atStart, "atStart");
    Objects.requireNonNull(share, "share");
    Objects.requireNonNull(count, "count");
  }

  /**
   * As reported for the arm; else summed up from its patients; else as reported for all arms
   * together, of which a share holds for each arm only where it is all or none.
   */
  public static ArmInfection of(Study study, Arm arm) {
    Baseline own = arm.baseline();
    if (own.infectedAtStart().isPresent()) {
      return new ArmInfection(own.infectedAtStart(), own.infectedShare(), own.infectedCount());
    }
    ArmInfection ofPatients = ofPatients(study.patientsOf(arm.id()));
    return ofPatients.atStart().isPresent() ? ofPatients : ofAll(study, own);
  }

  private static ArmInfection ofPatients(List<PatientRow> patients) {
    List<YesOrNo> said = patients.stream().flatMap(p -> p.infected().stream()).toList();
    if (said.isEmpty()) {
      return UNKNOWN;
    }
    int yes = (int) said.stream().filter(YesOrNo.YES::equals).count();
    int no = (int) said.stream().filter(YesOrNo.NO::equals).count();
    Optional<EventCount> count =
        yes + no == 0 ? Optional.empty() : Optional.of(EventCount.of(yes, yes + no));
    return new ArmInfection(
        Optional.of(among(said.stream().collect(Collectors.toSet()))),
        count.flatMap(EventCount::share),
        count);
  }

  /** Yes or no only when all patients of whom it is said agree; unclear where one is unclear. */
  private static YesOrNo among(Set<YesOrNo> answers) {
    if (answers.size() == 1) {
      return answers.iterator().next();
    }
    boolean both = answers.contains(YesOrNo.YES) && answers.contains(YesOrNo.NO);
    return both || answers.contains(YesOrNo.MIXED) ? YesOrNo.MIXED : YesOrNo.UNCLEAR;
  }

  private static ArmInfection ofAll(Study study, Baseline own) {
    Baseline all = study.whole();
    if (study.arms().size() == 1) {
      return new ArmInfection(all.infectedAtStart(), all.infectedShare(), all.infectedCount());
    }
    Optional<Double> share = all.infectedShare().filter(one -> one == 0 || one == 1);
    Optional<EventCount> count =
        share.isPresent() && own.patients().isPresent()
            ? Optional.of(
                EventCount.of(
                    share.get() == 1 ? own.patients().getAsInt() : 0, own.patients().getAsInt()))
            : Optional.empty();
    return new ArmInfection(all.infectedAtStart(), share, count);
  }
}
