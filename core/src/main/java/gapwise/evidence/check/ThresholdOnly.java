package gapwise.evidence.check;

import gapwise.evidence.DefectLength;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Group;
import gapwise.evidence.rule.GroupRule;
import gapwise.evidence.rule.Printed;
import java.util.Optional;

/** A defect known by a threshold of selection alone, which says little of the patients. */
final class ThresholdOnly implements GroupRule {
  @Override
  public void check(Group group, Findings findings) {
    Optional<DefectLength> defect = group.baseline().defect();
    boolean only =
        defect.isPresent()
            && defect.get().overCentimetres().isPresent()
            && defect.get().summary().filter(summary -> !summary.isEmpty()).isEmpty()
            && defect.get().bands().isEmpty();
    if (only) {
      findings.doubtful(
          group.part("defect_length_over_cm"),
          "threshold-only",
          "Only a threshold of "
              + Printed.number(defect.get().overCentimetres().getAsDouble())
              + " cm is given. Look for a mean, median, range or single lengths in text, tables and"
              + " figures.");
    }
  }
}
