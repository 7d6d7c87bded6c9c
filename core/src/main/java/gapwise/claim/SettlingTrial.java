package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.subgroups.SubgroupsResult;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.analysis.trial.TrialResult;
import gapwise.answer.Answer;
import gapwise.answer.PooledValue;
import gapwise.answer.Told;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import gapwise.problem.Problem;
import gapwise.selection.QuestionJson;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Asks the plan how many patients a trial of the two methods needs. */
final class SettlingTrial {
  /** Of 100 patients (common practice, no source). */
  static final double USUAL_OF_100 = 10;

  /** Percent of the mean (common practice, no source). */
  static final double USUAL_PERCENT = 20;

  private final Runner runner;
  private final Claim claim;
  private final Answer answer;
  private final Effect effect;
  private final boolean ofHundred;

  SettlingTrial(Runner runner, Claim claim, Answer answer) {
    this.runner = runner;
    this.claim = claim;
    this.answer = answer;
    this.effect = Effect.of(answer.selection().settled());
    this.ofHundred = effect == Effect.ODDS_RATIO;
  }

  /**
   * The trial.
   *
   * @param asked the difference that would matter; empty takes the usual one
   */
  Settling of(OptionalDouble asked) {
    OptionalDouble comparator = pooled();
    double usual = ofHundred ? USUAL_OF_100 : USUAL_PERCENT;
    double difference = asked.orElse(usual);
    if (effect == Effect.RATE_RATIO) {
      return new Settling(
          say("claim.trial-not-of-rates"),
          difference,
          asked.isEmpty(),
          ofHundred,
          Optional.empty());
    }
    if (comparator.isEmpty()) {
      return new Settling(
          say("claim.trial-without-start", Map.of("method", claim.b().name())),
          difference,
          asked.isEmpty(),
          ofHundred,
          Optional.empty());
    }
    double from = comparator.getAsDouble();
    double sign = claim.direction() == Direction.MORE ? 1 : -1;
    double step = sign * difference / 100;
    if (ofHundred && asked.isEmpty() && !(from + step > 0 && from + step < 1)) {
      // Half of what is left to everybody or nobody, where ten of 100 are not left.
      step = sign * (sign > 0 ? 1 - from : from) / 2;
      difference = Math.abs(step) * 100;
    }
    ObjectNode plan = plan(from, ofHundred ? from + step : from * (1 + step));
    PlanOutcome outcome = runner.run(plan, Optional.empty());
    String sentence =
        outcome instanceof PlanOutcome.Done done
            ? told(plan, done.result().part(TrialResult.class).orElseThrow())
            : say(
                "claim.not-worked-out",
                Map.of(
                    "problem",
                    ((PlanOutcome.Wrong) outcome)
                        .problems().stream().map(Problem::message).findFirst().orElse("")));
    return new Settling(sentence, difference, asked.isEmpty(), ofHundred, Optional.of(plan));
  }

  /** The pooled value of the second method, as people read it. */
  private OptionalDouble pooled() {
    return answer
        .result()
        .flatMap(
            result ->
                SynthesisResult.of(result)
                    .group(claim.b().method().code())
                    .flatMap(SubgroupsResult.Subgroup::summary))
        .map(summary -> OptionalDouble.of(PooledValue.average(summary.shown()).value()))
        .orElse(OptionalDouble.empty());
  }

  private ObjectNode plan(double comparator, double intervention) {
    ObjectNode plan = JsonNodeFactory.instance.objectNode();
    plan.put("task", "trial");
    plan.put(
        "title",
        say("claim.plan-trial", Map.of("first", claim.a().name(), "second", claim.b().name())));
    plan.put("measure", ofHundred ? "proportion" : "mean");
    if (!ofHundred) {
      plan.putObject("source").set("evidence", QuestionJson.write(answer.selection().settled()));
      boolean logs = effect == Effect.RATIO_OF_MEANS;
      plan.put("scale", logs ? "log" : "raw");
    }
    plan.put("comparator", comparator);
    return plan.put("intervention", intervention);
  }

  private String told(ObjectNode plan, TrialResult trial) {
    Map<String, Object> values = new HashMap<>();
    values.put("perArm", trial.patientsPerArm());
    values.put("patients", trial.patients());
    values.put("first", claim.a().name());
    values.put("second", claim.b().name());
    Quantity measure = Told.measure(claim.outcome(), answer.selection().rows());
    values.put("ofFirst", Shown.value(measure, plan.get("intervention").asDouble()));
    values.put("ofSecond", Amount.of(measure, plan.get("comparator").asDouble()));
    if (trial.powerOfExactTest().isPresent()) {
      return say("claim.trial-counted-exactly", values);
    }
    trial
        .patientsPerArmWithContinuityCorrection()
        .ifPresent(corrected -> values.put("exact", corrected));
    trial.groupsWithSpread().ifPresent(series -> values.put("series", series));
    if (values.containsKey("exact")) {
      return say("claim.trial-read-exactly", values);
    }
    return say(values.containsKey("series") ? "claim.trial-spread" : "claim.trial", values);
  }
}
