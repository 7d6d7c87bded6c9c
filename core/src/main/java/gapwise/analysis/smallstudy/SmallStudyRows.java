package gapwise.analysis.smallstudy;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.pooling.PoolingPlan;
import gapwise.analysis.pooling.Studies;
import gapwise.analysis.pooling.Synthesis;
import gapwise.analysis.result.Result;
import gapwise.effect.ArmCounts;
import gapwise.effect.ArmRate;
import gapwise.effect.StudyData;
import gapwise.effect.TwoByTwo;
import gapwise.effect.TwoRates;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.smallstudy.SmallStudyData;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The pooled rows as tests for small-study effects take them. */
final class SmallStudyRows {
  /** Measures whose standard error moves with the effect on any scale. */
  private static final Set<String> ERROR_FOLLOWS =
      Set.of(
          "odds-ratio",
          "risk-ratio",
          "risk-difference",
          "incidence-rate-ratio",
          "standardised-mean-difference",
          "ratio-of-means");

  /** Scales of one proportion or rate on which it does; the others are there to steady it. */
  private static final Set<String> UNSTEADY_SCALES = Set.of("logit", "log", "raw");

  private SmallStudyRows() {}

  /** The rows with an effect of their own; a warning counts those without. */
  static <D extends StudyData> SmallStudyData of(
      Synthesis<D> synthesis, List<Result.Warning> warnings) {
    List<Studies.Entry<D>> pooled = synthesis.studies().pooled();
    List<Studies.Entry<D>> used = withEffect(pooled);
    if (used.size() < pooled.size()) {
      warnings.add(
          Result.Warning.of(
              "study-left-out",
              say(
                  "analysis.not-in-the-funnel",
                  Map.of(
                      "out",
                      String.valueOf(pooled.size() - used.size()),
                      "studies",
                      String.valueOf(pooled.size())))));
    }
    return new SmallStudyData(
        sample(used),
        tables(synthesis.plan(), used),
        errorFollows(synthesis.plan()),
        (int) used.stream().filter(entry -> atBound(entry.data().orElseThrow())).count(),
        synthesis.plan().model().settings());
  }

  /** The pooled rows whose own effect is finite. */
  static <D extends StudyData> List<Studies.Entry<D>> withEffect(List<Studies.Entry<D>> pooled) {
    return pooled.stream()
        .filter(entry -> entry.effect().orElseThrow().estimate().isPresent())
        .toList();
  }

  private static <D extends StudyData> EffectSample sample(List<Studies.Entry<D>> used) {
    return EffectSample.of(
        used.stream().map(e -> e.effect().orElseThrow().estimate().orElseThrow()).toList(),
        used.stream().map(e -> e.effect().orElseThrow().variance().orElseThrow()).toList());
  }

  private static <D extends StudyData> Optional<List<TwoByTwo>> tables(
      PoolingPlan plan, List<Studies.Entry<D>> used) {
    if (!plan.measure().equals("odds-ratio")) {
      return Optional.empty();
    }
    List<TwoByTwo> tables = new ArrayList<>();
    used.forEach(entry -> tables.add((TwoByTwo) entry.data().orElseThrow()));
    return Optional.of(tables);
  }

  private static boolean errorFollows(PoolingPlan plan) {
    return switch (plan.measure()) {
      case "proportion", "incidence-rate" -> UNSTEADY_SCALES.contains(plan.scale());
      default -> ERROR_FOLLOWS.contains(plan.measure());
    };
  }

  private static boolean atBound(StudyData data) {
    if (data instanceof ArmCounts arm) {
      return atBound(arm);
    }
    if (data instanceof TwoByTwo table) {
      return atBound(table.intervention()) || atBound(table.comparator());
    }
    if (data instanceof ArmRate arm) {
      return arm.events() == 0;
    }
    return data instanceof TwoRates rates
        && (rates.intervention().events() == 0 || rates.comparator().events() == 0);
  }

  private static boolean atBound(ArmCounts arm) {
    return arm.events() == 0 || arm.nonEvents() == 0;
  }
}
