package gapwise.place;

import gapwise.answer.ComparisonAlert;
import gapwise.selection.SelectedRow;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A case with its place among published evidence.
 *
 * @param patientCase the case
 * @param milestones each milestone on each clock; those with series beside them first
 */
public record PlacedCase(PatientCase patientCase, List<PlacedMilestone> milestones) {
  public PlacedCase {
    Objects.requireNonNull(patientCase, "patientCase");
    milestones = List.copyOf(milestones);
  }

  /** Every group of patients behind it, each once. */
  public List<SelectedRow> groups() {
    Map<String, SelectedRow> once = new LinkedHashMap<>();
    for (PlacedMilestone milestone : milestones) {
      for (SelectedRow row :
          milestone.methods().isEmpty() ? List.<SelectedRow>of() : milestone.selection().rows()) {
        once.putIfAbsent(row.study().id() + " " + row.arm().id(), row);
      }
    }
    return List.copyOf(once.values());
  }

  /** What differs between the groups of several methods. */
  public Optional<ComparisonAlert> alert() {
    return ComparisonAlert.of(groups());
  }
}
