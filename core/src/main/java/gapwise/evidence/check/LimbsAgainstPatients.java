package gapwise.evidence.check;

import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Group;
import gapwise.evidence.rule.GroupRule;

/** Patients, limbs and defects of an arm beside each other (common practice, no source). */
final class LimbsAgainstPatients implements GroupRule {
  private static final double FAR_APART = 0.2;

  @Override
  public void check(Group group, Findings findings) {
    if (group.baseline().patients().isEmpty() || group.baseline().limbs().isEmpty()) {
      return;
    }
    int patients = group.baseline().patients().getAsInt();
    int limbs = group.baseline().limbs().getAsInt();
    if (limbs < patients) {
      findings.doubtful(
          group.part("limbs"),
          "fewer-limbs-than-patients",
          limbs
              + " limbs of "
              + patients
              + " patients: every patient has at least one. Check which are counted.");
    } else if (limbs - patients > FAR_APART * patients) {
      findings.doubtful(
          group.part("limbs"),
          "many-more-limbs-than-patients",
          limbs
              + " limbs of "
              + patients
              + " patients: more than one in five had both legs treated. Check the counts.");
    }
  }
}
