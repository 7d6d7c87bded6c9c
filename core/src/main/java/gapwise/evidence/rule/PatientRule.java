package gapwise.evidence.rule;

import gapwise.evidence.PatientRow;
import gapwise.evidence.Study;

/** A rule about one patient. */
public interface PatientRule extends StudyRule {
  void check(Study study, PatientRow patient, Findings findings);

  @Override
  default void check(Study study, Findings findings) {
    study.patients().forEach(patient -> check(study, patient, findings));
  }

  /** Names a field of the patient. */
  static RecordPart part(Study study, PatientRow patient, String field) {
    return new RecordPart.OfPatient(study.id(), patient.id(), field);
  }
}
