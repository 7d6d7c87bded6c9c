package gapwise.demonstration;

import gapwise.evidence.vocabulary.Bone;
import java.util.ArrayList;
import java.util.List;

/** Draws limbs one after the other from the truth of a method. */
final class LimbSimulator {
  private final ArmPlan plan;
  private final Truth truth;
  private final Draw draw;
  private final double studyDeviation;
  private final double studyTempo;

  private LimbSimulator(ArmPlan plan, Draw draw) {
    this.plan = plan;
    this.truth = Truth.of(plan.method());
    this.draw = draw;
    this.studyDeviation = truth.betweenStudies() * draw.normal();
    this.studyTempo = draw.factor(0.10);
  }

  /**
   * The limbs of an arm: first one of each patient, then the second limbs of the first patients.
   * Drawn in order, so a longer list from the same stream starts with the shorter one.
   */
  static List<TrueLimb> limbs(ArmPlan plan, Draw draw) {
    LimbSimulator simulator = new LimbSimulator(plan, draw);
    List<TrueLimb> limbs = new ArrayList<>();
    for (int patient = 0; patient < plan.patients(); patient++) {
      limbs.add(simulator.limb(simulator.person()));
    }
    for (int second = 0; second < plan.secondLimbs(); second++) {
      limbs.add(simulator.limb(limbs.get(second).person()));
    }
    return limbs;
  }

  private TrueLimb.Person person() {
    int age = (int) Math.round(Math.min(76, Math.max(17, 38 + 12 * draw.normal())));
    return new TrueLimb.Person(
        age, draw.chance(0.8), draw.chance(0.4), draw.chance(age > 45 ? 0.2 : 0.06));
  }

  private TrueLimb limb(TrueLimb.Person person) {
    TrueLimb.Start start = start();
    boolean primary =
        draw.chance(
            truth.primaryUnion(start.defectCentimetres(), start.infected(), studyDeviation));
    boolean joined = draw.chance(Truth.RESCUED) || primary;
    TrueLimb.Course course = course(start, primary, joined);
    return new TrueLimb(person, start, course, result(course, person));
  }

  private TrueLimb.Start start() {
    double length = plan.meanCentimetres() * draw.factor(0.32);
    length = Math.min(19, Math.max(plan.shortestCentimetres(), length));
    Bone drawn = draw.chance(plan.femurShare()) ? Bone.FEMUR : Bone.TIBIA;
    Bone bone = plan.bone().orElse(drawn);
    String segment =
        (bone == Bone.FEMUR ? "3" : "4") + draw.oneOf(List.of("2", "2", "2", "3", "1"));
    return new TrueLimb.Start(
        bone,
        bone == Bone.FOOT ? "44" : segment,
        Math.round(length * 10) / 10.0,
        draw.chance(plan.infectedShare()),
        draw.oneOf(List.of(0, 2, 3, 4, 4, 5)),
        Math.round(draw.waiting(7) * 10 + 2) / 10.0,
        Math.round(draw.uniform(5, 12)),
        draw.count(2.4));
  }

  private TrueLimb.Course course(TrueLimb.Start start, boolean primary, boolean joined) {
    double atFirst =
        (truth.monthsAtNoLength() + truth.monthsPerCentimetre() * start.defectCentimetres())
                * studyTempo
                * draw.factor(0.16)
            + (start.infected() ? 0.6 : 0);
    double unionMonths = primary ? atFirst : atFirst + draw.uniform(3, 8);
    double frame = plan.framed() ? unionMonths + draw.uniform(0.3, 1.3) : 0;
    double everInfected = start.infected() ? truth.recurrence() : truth.newInfection();
    boolean infects = draw.chance(everInfected);
    double waiting = draw.waiting(Truth.MONTHS_TO_INFECTION);
    double infection = infects ? waiting : Double.POSITIVE_INFINITY;
    int unplanned =
        draw.count(0.25) + (primary ? 0 : draw.whole(1, 2)) + (infects && waiting < 60 ? 1 : 0);
    double follow = Math.max(6, plan.followUpMonths() * draw.factor(0.25));
    double days = draw.uniform(12, 45) + 9.0 * unplanned;
    return new TrueLimb.Course(
        primary,
        joined,
        unionMonths,
        frame,
        infection,
        truth.partialWeightMonths() * draw.factor(0.25),
        unionMonths * truth.fullInSupportShare(),
        Math.max(frame, unionMonths) + truth.unsupportedExtraMonths() * draw.factor(0.3),
        follow,
        unplanned,
        plan.stages(),
        draw.count(truth.complications()) + (primary ? 0 : 1),
        Math.round(days),
        Math.round(days * 310 + plan.stages() * 2600 + unplanned * 2100));
  }

  private TrueLimb.Result result(TrueLimb.Course course, TrueLimb.Person person) {
    boolean infected = course.infectionMonths() <= course.followUpMonths();
    boolean amputated =
        draw.chance(
            course.finalUnion()
                ? (infected ? Truth.REMOVED_IF_INFECTED : 0.005)
                : Truth.REMOVED_IF_NEVER_JOINED);
    double health = draw.normal() - (course.finalUnion() ? 0 : 1.2) - person.ageYears() / 60.0;
    return new TrueLimb.Result(
        course.finalUnion() && draw.chance(truth.refracture()),
        amputated,
        draw.chance(0.01),
        plan.framed() && draw.chance(0.45),
        draw.chance(truth.donorTrouble()),
        draw.chance(0.08),
        draw.chance(0.10),
        draw.chance(0.12),
        Math.round(10 * Math.abs(0.9 * draw.normal())) / 10.0,
        bounded(60 + 9 * health, 5, 80),
        bounded(45 + 7 * health, 15, 65),
        bounded(2.2 - 1.4 * health, 0, 10),
        draw.chance(course.finalUnion() ? 0.88 : 0.4),
        draw.chance(course.finalUnion() ? 0.7 : 0.3));
  }

  private static int bounded(double value, int from, int to) {
    return (int) Math.max(from, Math.min(to, Math.round(value)));
  }
}
