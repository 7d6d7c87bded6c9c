package gapwise.evidence.check;

import gapwise.evidence.DefectLength;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Study;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Group;
import gapwise.evidence.rule.PatientRule;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.RecordPart;
import gapwise.evidence.rule.StudyRule;
import gapwise.evidence.unit.Length;
import gapwise.evidence.unit.Unit;
import java.util.Optional;

/**
 * Lengths of missing bone that cannot be (longer than an adult femur) or seldom are, such as none
 * (common practice, no source; published series reach 26 cm, Bone Joint J 2020;102-B:1723).
 */
final class DefectLengthLimits implements StudyRule {
  private static final double LONGEST = 45;
  private static final double LONG = 20;
  private static final double LONG_MEAN = 15;
  private static final double SHORT = 1;

  @Override
  public void check(Study study, Findings findings) {
    for (Group group : Group.of(study)) {
      Optional<DefectLength> defect = group.baseline().defect();
      defect.flatMap(DefectLength::summary).ifPresent(s -> check(group, s, findings));
    }
    study
        .patients()
        .forEach(
            patient ->
                patient
                    .defect()
                    .ifPresent(
                        length ->
                            check(
                                PatientRule.part(study, patient, "defect_length"),
                                length,
                                findings)));
  }

  private static void check(RecordPart part, Length length, Findings findings) {
    check(part, length.value(), length.unit(), LONG, findings);
  }

  private static void check(Group group, QuantitySummary summary, Findings findings) {
    NegativeQuantity.numbers(summary)
        .forEach(
            (column, value) -> {
              if (value.isPresent() && value.getAsDouble() >= 0) {
                double longest =
                    column.equals("mean") || column.equals("median") ? LONG_MEAN : LONG;
                check(
                    group.part("defect_length_" + column),
                    value.getAsDouble(),
                    summary.unit(),
                    longest,
                    findings);
              }
            });
  }

  private static void check(
      RecordPart part, double value, Unit unit, double longest, Findings findings) {
    double centimetres = unit.to(Unit.CENTIMETRES, value);
    String found = Printed.number(value) + " " + unit.symbol();
    if (centimetres > LONGEST) {
      findings.impossible(
          part,
          "defect-length-impossible",
          "A missing length of "
              + found
              + " cannot be: at most 45 cm were expected. Check the number and"
              + " whether it is mm or cm.");
    } else if (centimetres == 0) {
      findings.doubtful(
          part,
          "defect-length-of-zero",
          "A missing length of 0 means that no bone is missing. Leave it if the paper counts such"
              + " patients; leave the cell blank if the length is not known.");
    } else if (centimetres > longest || centimetres < SHORT) {
      findings.doubtful(
          part,
          "defect-length-unusual",
          "A missing length of "
              + found
              + " is unusual: 1 to "
              + Printed.number(longest)
              + " cm were expected here. Check the number and whether it is mm or cm.");
    }
  }
}
