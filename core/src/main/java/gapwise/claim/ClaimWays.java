package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.QuestionPlan;
import gapwise.analysis.Runner;
import gapwise.analysis.multiverse.MultiverseResult;
import gapwise.analysis.subgroups.SubgroupsResult;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.answer.QuestionWords;
import gapwise.answer.Told;
import gapwise.claim.Verdict.Examined;
import gapwise.figure.value.Shown;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Analyses the evidence on a claim in every defensible way: the direct comparison where there are
 * two studies or more, else each method against the usual value of the other.
 */
final class ClaimWays {
  /** The choice of a study to leave out, as the task names it. */
  private static final String LEAVE_ONE_OUT = "leaveOneOut";

  private final Runner runner;
  private final Examined examined;
  private final Claim claim;
  private final List<Ways.Line> lines = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  ClaimWays(Runner runner, Examined examined) {
    this.runner = runner;
    this.examined = examined;
    this.claim = examined.claim();
  }

  Ways all() {
    Part direct = examined.direct();
    if (direct.compared().filter(told -> told.studies() > 1).isPresent()) {
      ObjectNode plan = direct.plan().orElseThrow().deepCopy();
      String evidence = say("claim.ways-direct");
      run(evidence, plan, true, say("claim.ways-against-none", Map.of("evidence", evidence)));
      return new Ways(say("claim.ways-of-direct"), lines, notes);
    }
    separate(claim.a(), claim.b(), true);
    separate(claim.b(), claim.a(), false);
    return new Ways(say("claim.ways-of-each"), lines, notes);
  }

  /** The series of one method, held against the middle centre of the other as if that were sure. */
  private void separate(Claim.Side own, Claim.Side other, boolean first) {
    OptionalDouble threshold = pooled(other);
    if (group(own).map(SubgroupsResult.Subgroup::studies).orElse(0) < 2) {
      notes.add(say("claim.ways-one-series", Map.of("method", own.name())));
      return;
    }
    if (threshold.isEmpty()) {
      notes.add(
          say("claim.ways-without-other", Map.of("method", own.name(), "other", other.name())));
      return;
    }
    QuestionPlan.of(
            examined
                .rows()
                .selection()
                .fixed(
                    examined
                        .rows()
                        .question()
                        .withAmong(
                            examined
                                .rows()
                                .question()
                                .among()
                                .withMethods(Set.of(own.method().code())))),
            QuestionWords.of(examined.rows().question()),
            false)
        .ifPresent(
            plan -> {
              plan.put("threshold", threshold.getAsDouble());
              String evidence = say("claim.ways-series", Map.of("method", own.name()));
              run(
                  evidence,
                  plan,
                  first,
                  say(
                      "claim.ways-against",
                      Map.of(
                          "evidence",
                          evidence,
                          "value",
                          Amount.of(
                              Told.measure(claim.outcome(), examined.rows().selection().rows()),
                              threshold.getAsDouble()),
                          "other",
                          other.name())));
            });
  }

  private Optional<SubgroupsResult.Subgroup> group(Claim.Side side) {
    return examined
        .rows()
        .result()
        .flatMap(result -> SynthesisResult.of(result).group(side.method().code()));
  }

  /**
   * The middle centre, and not the average over centres: what the ways of the other method tell is
   * the middle too, and like stands against like.
   */
  private OptionalDouble pooled(Claim.Side side) {
    return group(side)
        .flatMap(SubgroupsResult.Subgroup::summary)
        .map(summary -> OptionalDouble.of(summary.shown().estimate()))
        .orElse(OptionalDouble.empty());
  }

  private void run(String evidence, ObjectNode plan, boolean aboveIsFirst, String heading) {
    // The exact likelihood has one scale; it stands among the models that are varied.
    QuestionPlan.byEffects(plan);
    plan.put("task", "multiverse");
    plan.put("interval", "hartung-knapp-never-narrower");
    PlanOutcome outcome = runner.run(plan, Optional.empty());
    if (outcome instanceof PlanOutcome.Wrong wrong) {
      notes.add(
          say(
              "claim.ways-not-worked-out",
              Map.of(
                  "evidence",
                  evidence,
                  "problem",
                  wrong.problems().stream().map(Problem::message).findFirst().orElse(""))));
      return;
    }
    Optional<MultiverseResult> result =
        ((PlanOutcome.Done) outcome).result().part(MultiverseResult.class);
    Optional<MultiverseResult.Threshold> sides = result.flatMap(MultiverseResult::threshold);
    if (sides.isEmpty()) {
      notes.add(say("claim.ways-without-value", Map.of("evidence", evidence)));
      return;
    }
    MultiverseResult.Threshold told = sides.get();
    double above = told.intervalsAbovePercent();
    double below = told.intervalsBelowPercent();
    lines.add(
        new Ways.Line(
            heading,
            result.get().counted().estimated(),
            of100(aboveIsFirst ? above : below),
            of100(aboveIsFirst ? below : above),
            of100(told.intervalsIncludingPercent()),
            of100(aboveIsFirst ? told.abovePercent() : told.belowPercent()),
            moves(result.get()),
            plan));
  }

  private static String of100(double percent) {
    return Shown.of100(Math.min(1, Math.max(0, percent / 100)));
  }

  private static List<String> moves(MultiverseResult result) {
    List<String> moves = new ArrayList<>();
    result.choices().stream()
        .filter(choice -> !choice.choice().equals(LEAVE_ONE_OUT))
        .filter(choice -> choice.range().orElse(0) > 0)
        .max(Comparator.comparingDouble(choice -> choice.range().getAsDouble()))
        .ifPresent(choice -> moves.add(movesMost(choice.choice())));
    result.studies().orElse(List.of()).stream()
        .filter(study -> Math.abs(study.shift().orElse(0)) > 0)
        .max(Comparator.comparingDouble(study -> Math.abs(study.shift().getAsDouble())))
        .ifPresent(
            study -> moves.add(say("claim.study-moves-most", Map.of("study", study.study()))));
    return moves;
  }

  private static String movesMost(String choice) {
    return switch (choice) {
      case "model" -> say("claim.model-moves-most");
      case "scale" -> say("claim.scale-moves-most");
      case "emptyCells" -> say("claim.empty-cells-move-most");
      case "betweenStudyVariance" -> say("claim.estimator-moves-most");
      case "interval" -> say("claim.interval-moves-most");
      case "missingSpread" -> say("claim.missing-spread-moves-most");
      default -> say("claim.choice-moves-most", Map.of("choice", choice));
    };
  }
}
