package gapwise.server.page;

import gapwise.evidence.Answer;
import gapwise.evidence.Arm;
import gapwise.evidence.ArmDefect;
import gapwise.evidence.Baseline;
import gapwise.evidence.Design;
import gapwise.evidence.Method;
import gapwise.evidence.Study;
import gapwise.evidence.Summary;
import gapwise.evidence.Unit;
import gapwise.figure.Shown;
import gapwise.wording.Defects;
import gapwise.wording.Pictures;
import gapwise.wording.Values;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One group of patients as a line of a list.
 *
 * @param href address of its study
 * @param label first author, year, and the arm where there are several
 * @param method what was done
 * @param detail design and infection in words
 * @param span the missing bone as a drawing
 * @param spanWords the same in words
 * @param patients patients or limbs in words
 * @param followed follow-up in words
 * @param value value of the outcome that was asked for; empty where none was or none is known
 */
public record ArmRow(
    String href,
    String label,
    Method method,
    String detail,
    String span,
    String spanWords,
    String patients,
    String followed,
    Optional<Values> value) {

  static ArmRow of(Study study, Arm arm, Optional<Values> value, double reachCentimetres) {
    Optional<ArmDefect> defect = ArmDefect.of(study, arm);
    return new ArmRow(
        "/studies/" + study.id(),
        label(study, arm),
        arm.method().principal(),
        detail(study, arm),
        Pictures.span(defect, reachCentimetres),
        defect.map(Defects::words).orElse("not reported"),
        patients(study, arm),
        followed(study, arm),
        value);
  }

  static String label(Study study, Arm arm) {
    String name = study.citation().label();
    return study.arms().size() == 1 ? name : name + ", " + arm.label().orElse(arm.id());
  }

  private static String detail(Study study, Arm arm) {
    List<String> parts = new ArrayList<>();
    arm.method().parts().forEach(part -> parts.add(part.label().toLowerCase(Locale.ROOT)));
    study.design().map(Design::label).ifPresent(parts::add);
    infected(study, arm).ifPresent(parts::add);
    return String.join(", ", parts);
  }

  private static Optional<String> infected(Study study, Arm arm) {
    return infected(arm.baseline()).or(() -> infected(study.whole()));
  }

  private static Optional<String> infected(Baseline baseline) {
    return baseline
        .infected()
        .filter(count -> count.isComplete())
        .map(
            count ->
                "infected at the start "
                    + count.events().getAsInt()
                    + " of "
                    + count.total().getAsInt())
        .or(() -> baseline.infectedAtStart().map(ArmRow::infected));
  }

  private static String infected(Answer answer) {
    return switch (answer) {
      case YES -> "infected at the start";
      case NO -> "not infected at the start";
      case MIXED -> "some infected at the start";
      case UNCLEAR -> "infection at the start unclear";
    };
  }

  private static String patients(Study study, Arm arm) {
    Baseline baseline = arm.baseline();
    int described = study.patientsOf(arm.id()).size();
    if (baseline.patients().isPresent()) {
      int patients = baseline.patients().getAsInt();
      String limbs =
          baseline.limbs().isPresent() && baseline.limbs().getAsInt() != patients
              ? ", " + baseline.limbs().getAsInt() + " limbs"
              : "";
      return patients + limbs;
    }
    if (baseline.limbs().isPresent()) {
      return baseline.limbs().getAsInt() + " limbs";
    }
    return described > 0 ? String.valueOf(described) : "not stated";
  }

  private static String followed(Study study, Arm arm) {
    Optional<Summary> followUp = arm.baseline().followUp().or(() -> study.whole().followUp());
    if (followUp.isEmpty() || followUp.get().unit().dimension() != Unit.Dimension.TIME) {
      return "not stated";
    }
    Summary months = followUp.get().in(Unit.MONTHS);
    if (months.centre().isPresent()) {
      return Shown.months(months.centre().getAsDouble()) + " months";
    }
    return months.minimum().isPresent()
        ? "at least " + Shown.months(months.minimum().getAsDouble()) + " months"
        : "not stated";
  }
}
