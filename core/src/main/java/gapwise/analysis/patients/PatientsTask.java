package gapwise.analysis.patients;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.plan.Task;
import gapwise.problem.Problems;
import java.util.List;
import java.util.OptionalInt;

/** The task {@code patients-with-summaries}. */
public final class PatientsTask implements Task {
  private static final int USUAL_POINTS = 25;

  @Override
  public String word() {
    return "patients-with-summaries";
  }

  @Override
  public void fill(Filling plan) {
    plan.text("measure", "proportion");
    boolean events = plan.is("measure", "proportion");
    plan.text("scale", events ? "logit" : "raw");
    plan.text(
        "betweenStudyVariance", events ? "maximum-likelihood" : "restricted-maximum-likelihood");
    if (events) {
      plan.number("quadraturePoints", USUAL_POINTS);
    }
    plan.number("centre", 0);
  }

  @Override
  public void check(ObjectNode full, Problems problems) {
    boolean events = full.get("measure").asText().equals("proportion");
    String scale = full.get("scale").asText();
    List<String> scales = events ? List.of("logit") : List.of("raw", "log");
    if (!scales.contains(scale)) {
      problems.add(
          "scale",
          "scale-not-for-measure",
          "'" + scale + "' is no scale for this measure here, which has " + scales);
    }
    if (events && !full.get("betweenStudyVariance").asText().equals("maximum-likelihood")) {
      problems.add(
          "betweenStudyVariance",
          "estimator-not-for-model",
          "events of patients are fitted by 'maximum-likelihood' alone");
    }
    if (full.path("summaries").has("table") == full.path("summaries").has("rows")
        && full.has("summaries")) {
      problems.add(
          "summaries",
          "wrong-source",
          "expected exactly one of \"table\" (a file) and \"rows\" (a list)");
    }
  }

  @Override
  public Plan read(ObjectNode full) {
    return new PatientsPlan(
        PlanHead.of(full),
        PlanHead.columns(full.path("summaries")),
        full.get("scale").asText().equals("log"),
        full.get("betweenStudyVariance").asText().equals("restricted-maximum-likelihood"),
        full.get("centre").asDouble(),
        full.has("quadraturePoints")
            ? OptionalInt.of(full.get("quadraturePoints").asInt())
            : OptionalInt.empty());
  }
}
