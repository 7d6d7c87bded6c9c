package gapwise.evidence.check;

import gapwise.evidence.Study;
import gapwise.evidence.rule.CollectionRule;
import gapwise.evidence.rule.Finding;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.StudyRule;
import java.util.List;
import java.util.function.Predicate;

/** The door of this room: every rule, and what they find. */
public final class EvidenceCheck {
  private static final List<StudyRule> OF_ONE_STUDY =
      List.of(
          new RecruitmentDates(),
          new IdentifierForms(),
          new UnionDefined(),
          new DefinitionRead(),
          new LimbsAgainstPatients(),
          new AgeLimits(),
          new BaselineCountsWithinArm(),
          new SharesOutOfTheOrdinary(),
          new DefectLengthLimits(),
          new ThresholdOnly(),
          new SegmentCodes(),
          new DetailLimits(),
          new FollowUp(),
          new FollowUpAgainstUnion(),
          new NegativeQuantity(),
          new SpreadAgainstMean(),
          new SpreadAgainstRange(),
          new StandardErrorAsDeviation(),
          new IntervalOfMean(),
          new IdenticalSpreads(),
          new PercentAgainstCount(),
          new CountsWithinArm(),
          new SubgroupsWithinTotal(),
          new SameNumberTwice(),
          new UnitFitsOutcome(),
          new FormFitsOutcome(),
          new IntervalOfEffect(),
          new ClockStated(),
          new PhaseNamed(),
          new PhasesAddUp(),
          new CostComplete(),
          new FrameOutcomes(),
          new FixationIndexLimits(),
          new IndexAgainstFrameTime(),
          new WeightBearingOrder(),
          new InfectionOutcomes(),
          new ScoreLimits(),
          new LegLengthLimits(),
          new PatientLimits(),
          new PatientsAgainstArm(),
          new AppraisalWhole(),
          new CurveOutcome(),
          new CurveTurnsBack(),
          new CurveStart(),
          new CurveAtRisk(),
          new CurveWithinArm(),
          new CurveEvents(),
          new CurveMedian(),
          new CurveAgainstOutcome());
  private static final List<CollectionRule> AMONG_STUDIES = List.of(new OnePaperOneCohort());

  private EvidenceCheck() {}

  /** What is impossible or doubtful in one study by itself, in the order of the rules. */
  public static List<Finding> of(Study study) {
    Findings findings = new Findings();
    OF_ONE_STUDY.forEach(rule -> rule.check(study, findings));
    return findings.list();
  }

  /** Which known studies can matter beside new ones; see {@link #among}. */
  public static Predicate<Study> near(List<Study> fresh) {
    return AMONG_STUDIES.stream()
        .map(rule -> rule.near(fresh))
        .reduce(study -> false, Predicate::or);
  }

  /**
   * What is doubtful about new studies beside each other and beside those known already, such as
   * one paper under two ids.
   *
   * @param fresh studies to judge
   * @param known studies to compare them with besides; none of them is judged
   */
  public static List<Finding> among(List<Study> fresh, List<Study> known) {
    Findings findings = new Findings();
    AMONG_STUDIES.forEach(rule -> rule.check(fresh, known, findings));
    return findings.list();
  }
}
