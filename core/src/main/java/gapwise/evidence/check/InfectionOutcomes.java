package gapwise.evidence.check;

import gapwise.evidence.EventCount;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.ReportRule;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** An infection outcome that does not fit whether the limbs were infected at the start. */
final class InfectionOutcomes implements ReportRule {
  @Override
  public void check(ReportAt at, Findings findings) {
    Optional<YesOrNo> atStart = at.group().flatMap(group -> group.baseline().infectedAtStart());
    boolean returned =
        at.code().equals("infection-recurrence") || at.code().equals("infection-eradication");
    if (returned && atStart.equals(Optional.of(YesOrNo.NO))) {
      findings.doubtful(
          at.part("outcome"),
          "recurrence-without-infection",
          "Infection can only return or be cured where there was one, but none of the arm was"
              + " infected at the start. Check both; a new infection is deep-infection.");
    } else if (at.code().equals("deep-infection") && atStart.equals(Optional.of(YesOrNo.YES))) {
      findings.doubtful(
          at.part("outcome"),
          "new-infection-in-infected",
          "A new deep infection is counted, but all of the arm were infected at the start. Check"
              + " both; an infection that came back is infection-recurrence.");
    } else if (atStart.equals(Optional.of(YesOrNo.MIXED)) && countsTheOthersToo(at, returned)) {
      findings.doubtful(
          at.part("outcome"),
          "infection-of-mixed-arm",
          "Only some of the arm were infected at the start, yet more are counted than can have '"
              + at.report().outcome().label()
              + "'. If the paper counts every deep infection, it is postoperative-deep-infection;"
              + " else give the total of those who can.");
    }
  }

  /** Whether the total is larger than the limbs that can have the outcome. */
  private static boolean countsTheOthersToo(ReportAt at, boolean returned) {
    if (!returned && !at.code().equals("deep-infection")
        || !(at.report().value() instanceof ReportedValue.Events events)
        || events.count().total().isEmpty()) {
      return false;
    }
    int total = events.count().total().getAsInt();
    Optional<EventCount> infected = at.group().flatMap(group -> group.baseline().infectedCount());
    if (infected.filter(EventCount::isComplete).isPresent()) {
      int with = infected.get().events().getAsInt();
      return total > (returned ? with : infected.get().total().getAsInt() - with);
    }
    OptionalDouble share = share(at);
    OptionalInt limbs =
        at.group().map(group -> group.baseline().limbs()).orElse(OptionalInt.empty());
    OptionalInt patients =
        at.group().map(group -> group.baseline().patients()).orElse(OptionalInt.empty());
    OptionalInt all = limbs.isPresent() ? limbs : patients;
    if (share.isEmpty() || all.isEmpty()) {
      return false;
    }
    double with = share.getAsDouble() * all.getAsInt();
    // A percentage is rounded, so less than one limb more is none.
    return total >= (returned ? with : all.getAsInt() - with) + 1;
  }

  private static OptionalDouble share(ReportAt at) {
    return at.group()
        .flatMap(group -> group.baseline().infectedShare())
        .map(OptionalDouble::of)
        .orElse(OptionalDouble.empty());
  }
}
