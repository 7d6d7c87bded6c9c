package gapwise.selection;

import gapwise.curation.KeptStudy;
import gapwise.evidence.Arm;
import gapwise.evidence.ArmName;
import gapwise.evidence.PatientRow;
import gapwise.evidence.Study;
import java.util.List;

/** An arm that the search found, with the version of its study that was read. */
record ArmCase(KeptStudy kept, Arm arm) {

  Study study() {
    return kept.study();
  }

  List<PatientRow> patients() {
    return study().patientsOf(arm.id());
  }

  LeftOut leftOut(Reason reason) {
    return new LeftOut(study().id(), arm.id(), ArmName.of(study(), arm), reason);
  }
}
