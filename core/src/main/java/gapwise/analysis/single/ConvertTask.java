package gapwise.analysis.single;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.plan.Task;
import gapwise.effect.MedianConversion;
import gapwise.problem.Problems;
import java.util.Arrays;

/** The task {@code convert}. */
public final class ConvertTask implements Task {
  @Override
  public String word() {
    return "convert";
  }

  @Override
  public void fill(Filling plan) {
    // Its methods must be named, and nothing else has a default.
  }

  @Override
  public void check(ObjectNode full, Problems problems) {
    // All that a plan of the right form asks can be done.
  }

  @Override
  public Plan read(ObjectNode full) {
    return new ConvertPlan(
        PlanHead.of(full),
        PlanHead.texts(full.get("methods")).stream().map(ConvertTask::method).toList());
  }

  private static MedianConversion method(String word) {
    return Arrays.stream(MedianConversion.values())
        .filter(one -> one.word().equals(word))
        .findFirst()
        .orElseThrow();
  }
}
