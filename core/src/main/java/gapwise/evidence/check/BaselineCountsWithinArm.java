package gapwise.evidence.check;

import gapwise.evidence.BoneCount;
import gapwise.evidence.DefectLength;
import gapwise.evidence.Detail;
import gapwise.evidence.rule.CountAt;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Group;
import gapwise.evidence.rule.GroupRule;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.vocabulary.CountedUnit;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * Counts of a part of the arm that exceed the arm. People cannot be more than the patients;
 * injuries and bones may be counted by limb, so they are refused only where the limbs are counted
 * too.
 */
final class BaselineCountsWithinArm implements GroupRule {
  private static final List<String> OF_INJURIES =
      List.of("vascular-injury", "nerve-injury", "compartment-syndrome", "polytrauma");

  @Override
  public void check(Group group, Findings findings) {
    for (CountAt at : CountAt.of(group)) {
      boolean people = !at.events().equals("infected");
      compare(group, at.events(), at.count().events().orElse(0), people, findings);
      compare(group, at.total(), at.count().total().orElse(0), people, findings);
    }
    compare(
        group, "lost_to_follow_up", group.baseline().lostToFollowUp().orElse(0), true, findings);
    int bones =
        group.baseline().bones().stream().map(BoneCount::count).mapToInt(c -> c.orElse(0)).sum();
    compare(group, "bones", bones, false, findings);
    int bands =
        group.baseline().defect().stream()
            .flatMap(defect -> defect.bands().stream())
            .mapToInt(DefectLength.Band::count)
            .sum();
    compare(group, "defect_length_bands_cm", bands, false, findings);
    compareSum(group, "gustilo-", "gustilo_iiib", findings);
    compareSum(group, "host-", "host_a", findings);
    OF_INJURIES.forEach(code -> compareSum(group, code, code.replace('-', '_'), findings));
  }

  private static void compareSum(Group group, String start, String field, Findings findings) {
    double sum =
        group.baseline().characteristics().entrySet().stream()
            .filter(entry -> entry.getKey().startsWith(start))
            .map(Map.Entry::getValue)
            .map(Detail::number)
            .mapToDouble(number -> number.orElse(0))
            .sum();
    compare(group, field, sum, false, findings);
  }

  private static void compare(
      Group group, String field, double found, boolean people, Findings findings) {
    OptionalInt size = people ? group.size(CountedUnit.PATIENTS) : group.largestSize();
    if (size.isEmpty() || found <= size.getAsInt()) {
      return;
    }
    String message =
        "Found "
            + Printed.number(found)
            + ", but the arm has only "
            + size.getAsInt()
            + ". Check both numbers, and whether limbs or defects are missing beside patients.";
    if (people || group.size(CountedUnit.LIMBS).isPresent()) {
      findings.impossible(group.part(field), "more-than-the-arm", message);
    } else {
      findings.doubtful(group.part(field), "more-than-the-patients", message);
    }
  }
}
