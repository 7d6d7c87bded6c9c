package gapwise.evidence.check;

import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.ReportRule;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.Optional;

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
    }
  }
}
