package gapwise.analysis.trial;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.plan.Task;
import gapwise.analysis.pooling.PoolingPlan;
import gapwise.analysis.synthesis.SynthesisTask;
import gapwise.problem.Problems;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The task {@code trial}. */
public final class TrialTask implements Task {
  private static final double USUAL_POWER = 0.8;

  @Override
  public String word() {
    return "trial";
  }

  @Override
  public void fill(Filling plan) {
    plan.text("measure", "proportion");
    if (plan.is("measure", "mean")) {
      plan.text("scale", "raw");
    }
    plan.number("power", USUAL_POWER);
  }

  @Override
  public void check(ObjectNode full, Problems problems) {
    double comparator = full.get("comparator").asDouble();
    double intervention = full.get("intervention").asDouble();
    if (full.get("measure").asText().equals("proportion")) {
      proportion("comparator", comparator, problems);
      proportion("intervention", intervention, problems);
      for (String field : List.of("scale", "standardDeviation", "source", "columns")) {
        if (full.has(field)) {
          problems.add(
              field,
              "not-for-measure",
              "a trial of proportions has no '"
                  + field
                  + "': both proportions say how widely"
                  + " patients differ; remove it");
        }
      }
    } else {
      means(full, comparator, intervention, problems);
    }
    if (comparator == intervention) {
      problems.add(
          "intervention",
          "no-difference",
          "found the same as the comparator, "
              + comparator
              + "; no number of patients finds a difference of 0: say which difference would"
              + " matter");
    }
  }

  private static void proportion(String field, double value, Problems problems) {
    if (!(value > 0 && value < 1)) {
      problems.add(
          field,
          "at-limit",
          "found "
              + value
              + ", expected a proportion above 0 and below 1: where everybody or nobody has the"
              + " event the formula gives patients no spread; take a rate that could really come");
    }
  }

  private static void means(
      ObjectNode full, double comparator, double intervention, Problems problems) {
    if (full.get("scale").asText().equals("log")) {
      for (String field : List.of("comparator", "intervention")) {
        if (!(full.get(field).asDouble() > 0)) {
          problems.add(
              field,
              "not-positive",
              "found " + full.get(field) + ", expected a mean above 0: the log scale has no other");
        }
      }
    }
    if (full.has("source") == full.has("standardDeviation")) {
      problems.add(
          "standardDeviation",
          "spread-once",
          "expected either \"standardDeviation\" (on the scale of the plan) or a \"source\" of"
              + " groups that tell theirs, and not both");
    }
  }

  @Override
  public Plan read(ObjectNode full) {
    return new TrialPlan(
        PlanHead.of(full),
        full.get("comparator").asDouble(),
        full.get("intervention").asDouble(),
        full.path("scale").asText().equals("log"),
        full.get("power").asDouble(),
        full.has("standardDeviation")
            ? OptionalDouble.of(full.get("standardDeviation").asDouble())
            : OptionalDouble.empty(),
        full.has("source") ? Optional.of(groups(full)) : Optional.empty());
  }

  /** Groups are read as a synthesis of means reads them, medians included. */
  private static PoolingPlan groups(ObjectNode full) {
    ObjectNode asked = Filling.copy(full);
    asked.remove(List.of("comparator", "intervention", "power", "task"));
    return SynthesisTask.pooling(Filling.of(new SynthesisTask(), asked));
  }
}
