package gapwise.selection;

import gapwise.curation.KeptStudy;
import gapwise.evidence.AllGroups;
import gapwise.evidence.Arm;
import gapwise.evidence.ArmName;
import gapwise.evidence.PatientRow;
import gapwise.evidence.Study;
import java.util.List;

/**
 * An arm that the search found, or all arms of a study as one, with the version of the study that
 * was read.
 */
record ArmCase(KeptStudy kept, Arm arm) {

  Study study() {
    return kept.study();
  }

  /** All groups of this study as one. */
  ArmCase allGroups() {
    return new ArmCase(kept, AllGroups.of(study()));
  }

  /** Whether this stands for all groups of the study. */
  boolean isAllGroups() {
    return AllGroups.is(study(), arm);
  }

  List<PatientRow> patients() {
    return study().patientsOf(arm.id());
  }

  LeftOut leftOut(Reason reason) {
    return new LeftOut(study().id(), arm.id(), ArmName.of(study(), arm), reason);
  }
}
