package gapwise.demonstration;

import gapwise.evidence.Baseline;
import gapwise.evidence.BoneCount;
import gapwise.evidence.Detail;
import gapwise.evidence.EventCount;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;

/** Who was treated, as a paper tells it: some counts given, some left out, some only in words. */
final class BaselineReport {
  private static final List<String> GUSTILO =
      List.of(
          "gustilo-closed",
          "gustilo-i",
          "gustilo-ii",
          "gustilo-iiia",
          "gustilo-iiib",
          "gustilo-iiic");

  private final ArmPlan plan;
  private final List<TrueLimb> limbs;
  private final List<TrueLimb> patients;
  private final Draw draw;
  private final Baseline.Builder baseline = Baseline.with();

  private BaselineReport(ArmPlan plan, List<TrueLimb> limbs, Draw draw) {
    this.plan = plan;
    this.limbs = limbs;
    this.patients = limbs.subList(0, plan.patients());
    this.draw = draw;
  }

  static Baseline of(ArmPlan plan, List<TrueLimb> limbs, Draw draw) {
    BaselineReport report = new BaselineReport(plan, limbs, draw);
    report.counts();
    report.people();
    report.limbsAtStart();
    report.followUp();
    return report.baseline.build();
  }

  private void counts() {
    baseline.patients(plan.patients());
    if (plan.secondLimbs() > 0 || draw.chance(0.4)) {
      baseline.limbs(limbs.size()).defects(limbs.size());
    }
  }

  private void people() {
    if (patients.size() == 1) {
      return;
    }
    List<Double> ages = patients.stream().map(l -> (double) l.person().ageYears()).toList();
    baseline.age(
        draw.oneOf(
                List.of(
                    SummaryStyle.MEAN_AND_RANGE,
                    SummaryStyle.MEAN_ALONE,
                    SummaryStyle.MEDIAN_AND_RANGE,
                    SummaryStyle.MEAN_AND_DEVIATION))
            .print(Unit.YEARS, 0, ages));
    baseline.male(count(patients, l -> l.person().male()));
    if (draw.chance(0.6)) {
      baseline.smokers(count(patients, l -> l.person().smoker()));
    }
    if (draw.chance(0.45)) {
      baseline.diabetics(count(patients, l -> l.person().diabetic()));
    }
  }

  private void limbsAtStart() {
    EventCount infected = count(limbs, l -> l.start().infected());
    boolean allOrNone = plan.infectedShare() == 0 || plan.infectedShare() == 1;
    if (allOrNone && draw.chance(0.5)) {
      baseline.infectedAnswer(plan.infectedShare() == 1 ? YesOrNo.YES : YesOrNo.NO);
    } else if (!plan.patientTable()) {
      baseline.infected(infected);
    }
    baseline.bones(bones());
    if (draw.chance(0.7)) {
      baseline.segments(limbs.stream().map(l -> l.start().segment()).distinct().sorted().toList());
    }
    if (draw.chance(0.2)) {
      baseline.boneWords("shaft, some near the joint");
    }
    plan.length()
        .print(limbs.stream().map(l -> l.start().defectCentimetres()).toList())
        .ifPresent(baseline::defect);
    baseline.characteristics(characteristics());
  }

  private List<BoneCount> bones() {
    List<BoneCount> bones = new ArrayList<>();
    for (Bone bone : Bone.values()) {
      int count = (int) limbs.stream().filter(l -> l.start().bone() == bone).count();
      if (count > 0) {
        bones.add(new BoneCount(bone, OptionalInt.of(count)));
      }
    }
    return bones;
  }

  private void followUp() {
    if (patients.size() == 1) {
      return;
    }
    List<Double> months = limbs.stream().map(l -> l.course().followUpMonths()).toList();
    QuantitySummary summary =
        draw.oneOf(
                List.of(
                    SummaryStyle.MEAN_AND_RANGE,
                    SummaryStyle.MEAN_ALONE,
                    SummaryStyle.MEDIAN_AND_RANGE))
            .print(Unit.MONTHS, 0, months);
    if (draw.chance(0.1)) {
      summary =
          SummaryStyle.MEAN_AND_RANGE.print(
              Unit.YEARS, 1, months.stream().map(m -> m / 12).toList());
    }
    baseline.followUp(summary);
    if (plan.lost() > 0 || draw.chance(0.4)) {
      baseline.lostToFollowUp(plan.lost());
    }
  }

  private SortedMap<String, Detail> characteristics() {
    TreeMap<String, Detail> all = new TreeMap<>();
    if (draw.chance(0.5) && patients.size() > 1) {
      for (int grade = 0; grade < GUSTILO.size(); grade++) {
        int wanted = grade;
        int count = (int) limbs.stream().filter(l -> l.start().gustilo() == wanted).count();
        all.put(GUSTILO.get(grade), MethodDetails.number(count));
      }
    }
    maybe(
        all,
        "months-from-injury",
        limbs.stream().mapToDouble(l -> l.start().monthsFromInjury()).average().orElse(0));
    maybe(
        all,
        "previous-operations",
        limbs.stream().mapToInt(l -> l.start().previousOperations()).average().orElse(0));
    if (draw.chance(0.4)) {
      all.put("mechanism", MethodDetails.words("road, fall from a quay, crush by cargo"));
    }
    if (draw.chance(0.5)) {
      all.put("cause-of-defect", MethodDetails.words(cause()));
    }
    if (draw.chance(0.4)) {
      all.put(
          "defect-pattern",
          MethodDetails.words(draw.oneOf(List.of("segmental", "segmental", "mixed"))));
    }
    if (plan.infectedShare() > 0 && draw.chance(0.4)) {
      all.put("organism", MethodDetails.words("mostly staphylococci, two limbs without growth"));
      all.put("antibiotic-weeks", MethodDetails.number(draw.whole(5, 12)));
    }
    return all;
  }

  private String cause() {
    return plan.infectedShare() == 1
        ? "infected nonunion"
        : plan.infectedShare() == 0 ? "acute extrusion" : "mixed";
  }

  private void maybe(SortedMap<String, Detail> all, String code, double mean) {
    if (draw.chance(0.45)) {
      all.put(code, MethodDetails.number(SummaryStyle.rounded(mean, 1)));
    }
  }

  private static EventCount count(List<TrueLimb> of, Predicate<TrueLimb> counted) {
    return EventCount.of((int) of.stream().filter(counted).count(), of.size());
  }
}
