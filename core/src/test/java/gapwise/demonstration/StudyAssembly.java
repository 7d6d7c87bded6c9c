package gapwise.demonstration;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.PatientRow;
import gapwise.evidence.PublishedCurve;
import gapwise.evidence.Study;
import gapwise.evidence.StudyBuilder;
import gapwise.evidence.unit.PartialDate;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.MethodPart;
import gapwise.evidence.vocabulary.Missing;
import gapwise.evidence.vocabulary.ReadAs;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;

/** Writes the paper of one planned study: patients drawn, then reported. */
final class StudyAssembly {
  private static final List<String> ARM_IDS = List.of("A", "B");

  private final StudyPlan plan;
  private final Draw reporting;
  private final List<List<TrueLimb>> limbsOfArms = new ArrayList<>();
  private final List<Arm> arms = new ArrayList<>();
  private final List<OutcomeReport> outcomes = new ArrayList<>();
  private final List<PatientRow> patients = new ArrayList<>();
  private final List<PublishedCurve> curves = new ArrayList<>();
  private final Draw drawing;

  private StudyAssembly(StudyPlan plan, Draw reporting, Draw drawing) {
    this.plan = plan;
    this.reporting = reporting;
    this.drawing = drawing;
  }

  static Study study(StudyPlan plan, long seed) {
    StudyAssembly assembly =
        new StudyAssembly(
            plan,
            Draw.of(seed, plan.number(), Draw.Purpose.REPORTING),
            Draw.of(seed, plan.number(), Draw.Purpose.FIGURES));
    Draw chance = Draw.of(seed, plan.stream(), Draw.Purpose.PATIENTS);
    for (ArmPlan arm : plan.arms()) {
      assembly.arm(arm, LimbSimulator.limbs(arm, chance));
    }
    assembly.outcomes.addAll(ComparisonRows.of(plan, assembly.limbsOfArms));
    Study study = assembly.study();
    Draw judging = Draw.of(seed, plan.number(), Draw.Purpose.JUDGING);
    return study.but().appraisals(Judgements.of(plan, study, judging)).build();
  }

  private void arm(ArmPlan arm, List<TrueLimb> limbs) {
    String id = ARM_IDS.get(arms.size());
    limbsOfArms.add(limbs);
    Baseline baseline = BaselineReport.of(arm, limbs, reporting);
    if (plan.reports(Habit.ALL_INFECTED_IN_PERCENT)) {
      baseline = baseline.but().infected(EventCount.ofPercent(100)).build();
    }
    arms.add(
        Arm.with(id, methodUsed(arm))
            .label(Method.of(arm.method()).shortLabel())
            .baseline(baseline)
            .details(MethodDetails.of(arm, reporting))
            .missing(missing(arm, baseline))
            .build());
    if (arm.patientTable()) {
      patients.addAll(PatientTable.of(plan, arm, id, limbs));
    }
    if (limbs.size() > 1) {
      ArmRows rows = new ArmRows(plan, arm, id, followed(arm, limbs), reporting);
      outcomes(rows);
      CurveFigures.of(rows, id, drawing).ifPresent(curves::add);
    }
  }

  /** Those lost are the last of the first limbs, so that second limbs stay with their patients. */
  private static List<TrueLimb> followed(ArmPlan arm, List<TrueLimb> limbs) {
    List<TrueLimb> followed = new ArrayList<>(limbs);
    followed.subList(arm.patients() - arm.lost(), arm.patients()).clear();
    return followed;
  }

  private void outcomes(ArmRows rows) {
    if (!rows.arm.patientTable()) {
      UnionRows.write(rows);
      HarmRows.write(rows);
      TimeRows.write(rows);
    }
    LifeRows.write(rows);
    PublishedRows.write(rows);
    outcomes.addAll(rows.rows());
  }

  private static MethodUsed methodUsed(ArmPlan arm) {
    return new MethodUsed(
        Method.of(arm.method()), arm.parts().stream().map(MethodPart::of).toList(), arm.words());
  }

  private static SortedMap<String, Missing> missing(ArmPlan arm, Baseline baseline) {
    TreeMap<String, Missing> missing = new TreeMap<>();
    if (baseline.smokers().isEmpty()) {
      missing.put("smokers", Missing.NOT_REPORTED);
    }
    if (baseline.diabetics().isEmpty()) {
      missing.put("diabetics", Missing.NOT_REPORTED);
    }
    return missing;
  }

  private Study study() {
    boolean frame = arms.stream().allMatch(arm -> arm.method().principal().frame());
    String union = Scenario.unionDefinition(plan.number(), frame);
    String infection = Scenario.INFECTION_DEFINITIONS.get(plan.number() % 3);
    String centre = Scenario.centre(plan.stream());
    StudyBuilder study =
        Study.with(plan.id(), citation())
            .reportKind(plan.abstractOf().isPresent() ? ReportKind.ABSTRACT : ReportKind.ARTICLE)
            .design(plan.design())
            .designWords(designWords())
            .centres(List.of(centre))
            .country(Scenario.COUNTRY)
            .setting(Scenario.setting(centre))
            .recruitmentFrom(date(plan.from(), 3))
            .recruitmentTo(date(plan.to(), 11))
            .consecutive(plan.number() % 3 == 0 ? YesOrNo.UNCLEAR : YesOrNo.YES)
            .assessorIndependent(plan.design() == Design.RANDOMISED ? YesOrNo.YES : YesOrNo.NO)
            .funding(plan.number() % 5 == 0 ? "public" : "not stated")
            .unionDefinition(union)
            .unionDefinitionKinds(Scenario.confirmed(plan.number(), "Union", union))
            .infectionDefinition(infection)
            .infectionDefinitionKinds(Scenario.confirmed(plan.number(), "Infection", infection))
            .invented(true)
            .status(plan.number() % 2 == 0 ? ExtractionStatus.VERIFIED : ExtractionStatus.EXTRACTED)
            .whole(whole())
            .arms(arms)
            .outcomes(outcomes)
            .patients(patients)
            .curves(curves)
            .note("invented for demonstration; describes nobody");
    plan.cohort().ifPresent(study::cohort);
    plan.suspected().ifPresent(other -> study.overlapSuspectedWith(List.of(StudyPlan.idOf(other))));
    if (plan.reports(Habit.SECOND_HAND)) {
      study.readAs(ReadAs.SECOND_HAND);
    }
    plan.abstractOf().ifPresent(other -> study.sameStudyAs(List.of(StudyPlan.idOf(other))));
    return study.build();
  }

  private Baseline whole() {
    if (!plan.reports(Habit.ALL_ARMS_TOGETHER)) {
      return Baseline.NOTHING;
    }
    List<TrueLimb> all = limbsOfArms.stream().flatMap(List::stream).toList();
    Baseline.Builder whole = Baseline.with().patients(all.size());
    LengthStyle.MEAN_AND_RANGE
        .print(all.stream().map(l -> l.start().defectCentimetres()).toList())
        .ifPresent(whole::defect);
    return whole.build();
  }

  private PartialDate date(int year, int month) {
    return new PartialDate(
        year, plan.number() % 4 == 1 ? OptionalInt.of(month) : OptionalInt.empty());
  }

  /** Titles are often wrong about design: every tenth paper calls itself prospective. */
  private String designWords() {
    return plan.number() % 10 == 9 ? "prospective study" : plan.design().label();
  }

  private Citation citation() {
    String surname = Scenario.surname(plan.stream());
    Citation.Builder citation =
        Citation.with(plan.titleStart() + ": " + plan.subject())
            .year(plan.to() + 2)
            .journal(Scenario.JOURNAL);
    if (!plan.reports(Habit.NO_AUTHORS)) {
      citation
          .firstAuthor(surname)
          .authors(surname + " A; " + Scenario.surname(plan.number() + 11) + " B");
    }
    plan.abstractOf()
        .ifPresent(
            other ->
                citation.otherSpellings(List.of(surname.replace("ll", "l") + " A", surname + "e")));
    if (plan.design() == Design.RANDOMISED) {
      citation.register("INVENTED-REGISTER-0055");
    }
    return citation.build();
  }
}
