package gapwise.demonstration;

import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.Provenance;
import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Length;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Sex;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** The patients of an arm one by one, with the gaps that such tables have. */
final class PatientTable {
  /** The one study whose table grades each patient rather than counting grades. */
  private static final int GRADED_STUDY = 14;

  private PatientTable() {}

  static List<PatientRow> of(StudyPlan study, ArmPlan arm, String armId, List<TrueLimb> limbs) {
    List<PatientRow> rows = new ArrayList<>();
    for (TrueLimb limb : limbs) {
      rows.add(row(study, arm, armId, limb, rows.size() + 1));
    }
    return rows;
  }

  private static PatientRow row(
      StudyPlan study, ArmPlan arm, String armId, TrueLimb limb, int position) {
    PatientRow.Builder row =
        PatientRow.with(armId + "-" + position, armId)
            .ageYears(limb.person().ageYears())
            .sex(limb.person().male() ? Sex.MALE : Sex.FEMALE)
            .bone(limb.start().bone())
            .segment(limb.start().segment())
            .followUp(Duration.ofMonths(SummaryStyle.rounded(limb.course().followUpMonths(), 0)))
            .outcomes(outcomes(study, arm, limb, position))
            .provenance(new Provenance(Optional.of("Table 1"), Optional.empty()));
    boolean unclear = position == 5;
    row.infected(unclear ? YesOrNo.UNCLEAR : limb.start().infected() ? YesOrNo.YES : YesOrNo.NO);
    if (position == 4) {
      row.note("length not given");
    } else {
      row.defect(length(study, limb, position == 3));
    }
    return row.build();
  }

  private static Length length(StudyPlan study, TrueLimb limb, boolean about) {
    double centimetres = limb.start().defectCentimetres();
    if (study.number() % 4 == 2) {
      return new Length(Math.rint(centimetres * 10), Unit.MILLIMETRES, about);
    }
    return about
        ? new Length(Math.max(1, Math.rint(centimetres)), Unit.CENTIMETRES, true)
        : new Length(centimetres, Unit.CENTIMETRES, false);
  }

  private static SortedMap<String, PatientOutcome> outcomes(
      StudyPlan study, ArmPlan arm, TrueLimb limb, int position) {
    TreeMap<String, PatientOutcome> outcomes = new TreeMap<>();
    boolean joined = UnionRows.joined(limb);
    outcomes.put("primary-union", happened(limb.course().primaryUnion()));
    outcomes.put("final-union", happened(joined));
    outcomes.put(
        limb.start().infected() ? "infection-recurrence" : "deep-infection",
        happened(limb.infectedInFollowUp()));
    outcomes.put("secondary-amputation", happened(limb.result().amputated()));
    if (position == 6) {
      outcomes.put("refracture", new PatientOutcome.Happened(YesOrNo.UNCLEAR));
    } else {
      outcomes.put("refracture", happened(limb.result().refracture()));
    }
    if (study.number() == GRADED_STUDY) {
      outcomes.put("bone-result", new PatientOutcome.Graded(LifeRows.boneGrade(limb)));
    }
    if (arm.framed()) {
      outcomes.put("external-fixation-time", months(limb.course().frameMonths()));
    }
    if (joined) {
      double weeks = Unit.MONTHS.to(Unit.WEEKS, limb.course().unionMonths());
      outcomes.put(
          "time-to-union",
          position % 2 == 0
              ? months(limb.course().unionMonths())
              : new PatientOutcome.Measured(Math.rint(weeks), Unit.WEEKS));
      outcomes.put("time-to-unsupported-weight-bearing", months(limb.course().unsupportedMonths()));
    }
    return outcomes;
  }

  private static PatientOutcome happened(boolean yes) {
    return new PatientOutcome.Happened(yes ? YesOrNo.YES : YesOrNo.NO);
  }

  private static PatientOutcome months(double value) {
    return new PatientOutcome.Measured(SummaryStyle.rounded(value, 1), Unit.MONTHS);
  }
}
