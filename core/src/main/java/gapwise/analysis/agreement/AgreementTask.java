package gapwise.analysis.agreement;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.plan.Task;
import gapwise.problem.Problems;
import java.util.ArrayList;
import java.util.List;

/** The task {@code agreement}. */
public final class AgreementTask implements Task {
  private static final double USUAL_MULTIPLIER = 1.96;

  @Override
  public String word() {
    return "agreement";
  }

  @Override
  public void fill(Filling plan) {
    List<String> asked = PlanHead.texts(plan.full().get("statistics"));
    if (!plan.given().has("weights") && asked.contains("kappa")) {
      plan.full().putArray("weights").add("none");
    }
    if (plan.given().has("multiplier") || asked.contains("limits-of-agreement")) {
      plan.number("multiplier", USUAL_MULTIPLIER);
    }
  }

  @Override
  public void check(ObjectNode full, Problems problems) {
    AgreementRules.check(full, problems);
  }

  @Override
  public Plan read(ObjectNode full) {
    List<AskedWeights> weights = new ArrayList<>();
    for (JsonNode one : full.path("weights")) {
      weights.add(AskedWeights.of(one));
    }
    return new AgreementPlan(
        PlanHead.of(full),
        PlanHead.texts(full.get("statistics")),
        PlanHead.texts(full.path("raters")),
        PlanHead.texts(full.path("categories")),
        weights,
        full.path("multiplier").asDouble(USUAL_MULTIPLIER));
  }
}
