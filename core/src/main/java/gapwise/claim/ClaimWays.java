package gapwise.claim;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.QuestionPlan;
import gapwise.analysis.Runner;
import gapwise.analysis.multiverse.MultiverseResult;
import gapwise.analysis.pooling.SubgroupsResult;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.answer.QuestionWords;
import gapwise.answer.Told;
import gapwise.claim.Verdict.Examined;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
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
      run("The direct comparison", plan, true, "no difference");
      return new Ways("the direct comparison", lines, notes);
    }
    separate(claim.a(), claim.b(), true);
    separate(claim.b(), claim.a(), false);
    return new Ways(
        "each method by itself against the pooled value of the other, as if that were sure, since fewer than two direct comparisons can be pooled",
        lines,
        notes);
  }

  /** The series of one method, held against the pooled value of the other as if that were sure. */
  private void separate(Claim.Side own, Claim.Side other, boolean first) {
    OptionalDouble threshold = pooled(other);
    if (group(own).map(SubgroupsResult.Subgroup::studies).orElse(0) < 2) {
      notes.add("Series of " + own.name() + ": there is one, which every analysis tells alike.");
      return;
    }
    if (threshold.isEmpty()) {
      notes.add(
          "Series of "
              + own.name()
              + " cannot be held against "
              + other.name()
              + ", which has no pooled value.");
      return;
    }
    QuestionPlan.of(
            examined
                .rows()
                .question()
                .withAmong(
                    examined.rows().question().among().withMethods(Set.of(own.method().code()))),
            QuestionWords.of(examined.rows().question()),
            false)
        .ifPresent(
            plan -> {
              plan.put("threshold", threshold.getAsDouble());
              Quantity measure = Told.measure(claim.outcome());
              String unit =
                  measure.kind() == Quantity.Kind.OF_100 ? " of 100" : " " + measure.unit();
              run(
                  "Series of " + own.name(),
                  plan,
                  first,
                  Shown.value(measure, threshold.getAsDouble())
                      + unit.stripTrailing()
                      + " after "
                      + other.name());
            });
  }

  private Optional<SubgroupsResult.Subgroup> group(Claim.Side side) {
    return examined
        .rows()
        .result()
        .flatMap(result -> SynthesisResult.of(result).group(side.method().code()));
  }

  private OptionalDouble pooled(Claim.Side side) {
    return group(side)
        .flatMap(SubgroupsResult.Subgroup::summary)
        .map(summary -> OptionalDouble.of(summary.shown().estimate()))
        .orElse(OptionalDouble.empty());
  }

  private void run(String what, ObjectNode plan, boolean aboveIsFirst, String against) {
    // The exact likelihood has one scale; it stands among the models that are varied.
    plan.put("task", "multiverse");
    plan.put("model", "random-effects");
    plan.put("interval", "hartung-knapp-never-narrower");
    plan.remove("predictionInterval");
    PlanOutcome outcome = runner.run(plan, Optional.empty());
    if (outcome instanceof PlanOutcome.Wrong wrong) {
      notes.add(
          what
              + ": not worked out. "
              + wrong.problems().stream().map(Problem::message).findFirst().orElse(""));
      return;
    }
    Optional<MultiverseResult> result =
        ((PlanOutcome.Done) outcome).result().part(MultiverseResult.class);
    Optional<MultiverseResult.Threshold> sides = result.flatMap(MultiverseResult::threshold);
    if (sides.isEmpty()) {
      notes.add(what + ": no analysis gives a pooled value.");
      return;
    }
    MultiverseResult.Threshold told = sides.get();
    double above = told.intervalsAbovePercent();
    double below = told.intervalsBelowPercent();
    lines.add(
        new Ways.Line(
            what + " against " + against,
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
        .ifPresent(
            choice -> moves.add("Of the choices, " + choice(choice.choice()) + " moves it most."));
    result.studies().orElse(List.of()).stream()
        .filter(study -> Math.abs(study.shift().orElse(0)) > 0)
        .max(Comparator.comparingDouble(study -> Math.abs(study.shift().getAsDouble())))
        .ifPresent(
            study -> moves.add("Of the studies, leaving out " + study.study() + " moves it most."));
    return moves;
  }

  private static String choice(String name) {
    return switch (name) {
      case "model" -> "the model";
      case "scale" -> "the scale";
      case "emptyCells" -> "what is added where nobody or everybody had the event";
      case "betweenStudyVariance" -> "the estimate of how series differ";
      case "interval" -> "the kind of interval";
      default -> "“" + name + "”";
    };
  }
}
