package gapwise.intake;

import gapwise.curation.Standing;
import gapwise.curation.StudiesAt;
import gapwise.evidence.Study;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The studies of one import beside one state of the base, held one at a time. Used once. */
final class Comparison {
  private final StudiesAt base;
  private final Agreement agreement;
  private final ChangeListener listener;
  private final List<String> fresh = new ArrayList<>();
  private final List<String> same = new ArrayList<>();
  private final List<String> changed = new ArrayList<>();
  private final List<String> mended = new ArrayList<>();
  private int open;

  Comparison(StudiesAt base, Agreement agreement, ChangeListener listener) {
    this.base = base;
    this.agreement = agreement;
    this.listener = listener;
  }

  /** Compares them all. */
  Comparison with(List<Study> studies) {
    listener.begin();
    studies.forEach(this::take);
    return this;
  }

  private void take(Study study) {
    Standing standing = base.standing(study.id());
    if (standing instanceof Standing.Unknown) {
      fresh.add(study.id());
    } else if (standing instanceof Standing.Damaged) {
      mended.add(study.id());
    } else if (standing instanceof Standing.Withdrawn withdrawn) {
      changed(new StudyChange(Optional.empty(), withdrawn.stamp(), study));
    } else if (standing instanceof Standing.Kept kept) {
      if (kept.kept().study().equals(study)) {
        same.add(study.id());
      } else {
        changed(new StudyChange(Optional.of(kept.kept().study()), kept.kept().stamp(), study));
      }
    }
  }

  private void changed(StudyChange change) {
    changed.add(change.after().id());
    boolean agreed = agreement.changes().test(change);
    if (!agreed) {
      open++;
    }
    listener.change(change, agreed);
  }

  /** How many changes nobody has agreed to. */
  int open() {
    return open;
  }

  Compared compared() {
    return new Compared(fresh, same, changed, mended, List.copyOf(agreement.left()));
  }
}
