package gapwise.evidence.check;

import gapwise.evidence.Arm;
import gapwise.evidence.EventCount;
import gapwise.evidence.PatientAggregation;
import gapwise.evidence.PatientRow;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.RecordPart;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.StudyRule;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Patients described one by one beside what is reported of their arm: no more of them than the arm
 * has, and where all are described, the same events.
 */
final class PatientsAgainstArm implements StudyRule {
  @Override
  public void check(Study study, Findings findings) {
    Map<String, List<PatientRow>> byArm =
        study.patients().stream().collect(Collectors.groupingBy(PatientRow::armId));
    for (Arm arm : study.arms()) {
      List<PatientRow> patients = byArm.getOrDefault(arm.id(), List.of());
      int treated = arm.baseline().patients().orElse(Integer.MAX_VALUE);
      if (patients.size() > treated) {
        findings.impossible(
            new RecordPart.OfArm(study.id(), arm.id(), "patients"),
            "more-patients-described",
            patients.size()
                + " patients are described one by one, but the arm has only "
                + treated
                + ". Check the number and the arm of each patient.");
      } else if (patients.size() == treated) {
        ReportAt.counting(study).stream()
            .filter(at -> at.report().scope().equals(new Scope.OneArm(arm.id())))
            .filter(at -> at.report().subgroup().isEmpty())
            .forEach(at -> compare(at, patients, findings));
      }
    }
  }

  private static void compare(ReportAt at, List<PatientRow> patients, Findings findings) {
    Optional<EventCount> counted =
        PatientAggregation.of(at.report().outcome(), patients)
            .filter(ReportedValue.Events.class::isInstance)
            .map(value -> ((ReportedValue.Events) value).count());
    if (counted.isEmpty() || !(at.report().value() instanceof ReportedValue.Events events)) {
      return;
    }
    boolean differ =
        events.count().events().isPresent()
            && counted.get().total().equals(events.count().total())
            && !counted.get().events().equals(events.count().events());
    if (differ) {
      findings.doubtful(
          at.part("events"),
          "patients-contradict-report",
          "The patients described one by one have "
              + counted.get().events().orElse(0)
              + " events, the paper reports "
              + events.count().events().getAsInt()
              + ". Check both.");
    }
  }
}
