package gapwise.evidence.check;

import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.Study;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.PatientRule;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.RecordPart;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import java.util.Optional;

/** What is impossible or unusual in one patient: age, outcomes in a form they do not have. */
final class PatientLimits implements PatientRule {
  private static final double OLD = 85;

  @Override
  public void check(Study study, PatientRow patient, Findings findings) {
    if (patient.ageYears().isPresent() && patient.ageYears().getAsDouble() > OLD) {
      findings.doubtful(
          PatientRule.part(study, patient, "age"),
          "age-unusual",
          "An age of "
              + Printed.number(patient.ageYears().getAsDouble())
              + " years is unusual in such studies. Check it.");
    }
    patient
        .outcomes()
        .forEach(
            (code, outcome) -> {
              RecordPart part = PatientRule.part(study, patient, code.replace('-', '_'));
              check(part, Outcome.vocabulary().find(code), code, outcome, findings);
            });
  }

  private static void check(
      RecordPart part,
      Optional<Outcome> known,
      String code,
      PatientOutcome outcome,
      Findings findings) {
    if (known.isEmpty()) {
      findings.impossible(
          part, "unknown-outcome", "There is no outcome '" + code + "'. Check its name.");
    } else if (!fits(known.get(), outcome)) {
      findings.impossible(
          part,
          "wrong-form",
          "'" + known.get().label() + "' cannot be given in this form or unit. Correct it.");
    } else if (outcome instanceof PatientOutcome.Measured measured
        && measured.value() < 0
        && known.get().kind() != Outcome.Kind.SCORE
        && !code.equals("limb-length-discrepancy")) {
      findings.impossible(
          part,
          "negative",
          "Found "
              + Printed.number(measured.value())
              + ", but this quantity cannot be negative. Check the sign.");
    }
  }

  private static boolean fits(Outcome outcome, PatientOutcome value) {
    if (value instanceof PatientOutcome.Measured measured) {
      Unit.Dimension dimension = outcome.unit().orElse(Unit.POINTS).dimension();
      return !outcome.isEvent()
          && outcome.kind() != Outcome.Kind.CATEGORIES
          && measured.unit().dimension() == dimension;
    }
    return value instanceof PatientOutcome.Happened
        ? outcome.isEvent()
        : outcome.kind() == Outcome.Kind.CATEGORIES;
  }
}
