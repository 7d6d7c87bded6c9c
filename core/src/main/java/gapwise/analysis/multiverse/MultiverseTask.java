package gapwise.analysis.multiverse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.moderators.AskedAbout;
import gapwise.analysis.moderators.AskedRegression;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.plan.Task;
import gapwise.analysis.pooling.ExactModels;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisDefaults;
import gapwise.analysis.synthesis.SynthesisTask;
import gapwise.analysis.synthesis.UnusedSettings;
import gapwise.effect.Measures;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The task {@code multiverse}. */
public final class MultiverseTask implements Task {
  private static final Task SYNTHESIS = new SynthesisTask();

  /** Fields of a plan that a synthesis does not have. */
  private static final List<String> OWN_FIELDS = List.of("vary", "threshold", "list", "about");

  @Override
  public String word() {
    return "multiverse";
  }

  @Override
  public void fill(Filling plan) {
    SYNTHESIS.fill(plan);
    VaryDefaults.fill(plan.full());
  }

  @Override
  public void check(ObjectNode full, Problems problems) {
    MultiverseRules.check(full, problems);
  }

  @Override
  public Plan read(ObjectNode full) {
    Vary vary = Vary.of(full);
    ObjectNode base = synthesis(full, Map.of());
    String measure = full.get("measure").asText();
    boolean commonByEffects =
        vary.models().contains("common-effect")
            && full.path("pooling").asText("inverse-variance").equals("inverse-variance");
    List<MultiversePlan.FromCounts> fromCounts = new ArrayList<>();
    // What the plan's own model has no use for, a model that is varied may use.
    List<Result.Warning> unused = new ArrayList<>(UnusedSettings.of(base));
    boolean moderated = full.has("moderators");
    for (String model : vary.models()) {
      if (model.equals("exact-likelihood")) {
        for (String interval :
            moderated ? vary.limits().testsOf(model) : vary.limits().exactIntervals()) {
          Map<String, String> fields = ofModel(model, measure);
          fields.put(moderated ? "moderatorTest" : "interval", interval);
          unused.retainAll(UnusedSettings.of(synthesis(full, fields)));
          fromCounts.add(fromCounts(full, model, interval, fields));
        }
      } else if (model.equals("bayesian") || (model.equals("common-effect") && !commonByEffects)) {
        fromCounts.add(fromCounts(full, model, "", ofModel(model, measure)));
      }
    }
    return new MultiversePlan(
        PlanHead.of(full),
        SynthesisTask.pooling(base),
        vary,
        OwnSettings.of(base),
        OwnSettings.ofPages(base),
        fromCounts,
        commonByEffects,
        usesEmptyCells(base, measure),
        moderated(full, base),
        unused);
  }

  private static Optional<MultiversePlan.Moderated> moderated(ObjectNode full, ObjectNode base) {
    return AskedRegression.of(base, SynthesisTask.pooling(base).model().settings())
        .map(
            asked ->
                new MultiversePlan.Moderated(
                    asked,
                    AskedAbout.of(full.get("about")),
                    Optional.ofNullable(full.get("cluster")).map(JsonNode::asText)));
  }

  private static MultiversePlan.FromCounts fromCounts(
      ObjectNode full, String model, String interval, Map<String, String> fields) {
    return new MultiversePlan.FromCounts(
        model, interval, SynthesisTask.pooling(synthesis(full, fields)));
  }

  private static Map<String, Boolean> usesEmptyCells(ObjectNode base, String measure) {
    Map<String, Boolean> uses = new LinkedHashMap<>();
    for (String scale : Measures.scales(measure)) {
      ObjectNode onScale = JsonNodeFactory.instance.objectNode();
      onScale.put("model", base.get("model").asText()).put("measure", measure).put("scale", scale);
      uses.put(scale, SynthesisDefaults.usesContinuityCorrection(onScale));
    }
    return uses;
  }

  /**
   * The fields that make a synthesis one of a model without an estimator of tau squared. An exact
   * likelihood, pooled by itself or with priors, has only the usual scale, whatever the plan's.
   */
  static Map<String, String> ofModel(String model, String measure) {
    Map<String, String> fields = new LinkedHashMap<>(Map.of("interval", "normal"));
    fields.put("model", model);
    List<String> scales = Measures.scales(measure);
    boolean counts = ExactModels.take(measure);
    boolean bayesian = model.equals("bayesian");
    if (counts && (bayesian || model.equals("exact-likelihood")) && scales.size() > 1) {
      fields.put("scale", scales.get(0));
    }
    if (counts && bayesian) {
      fields.put("likelihood", "exact");
    }
    return fields;
  }

  /** The synthesis in a plan of this task, with some of its fields set anew. */
  static ObjectNode synthesis(ObjectNode full, Map<String, String> fields) {
    // What is varied can be long; the fields set here are those of this copy, and their contents
    // are copied with the defaults.
    ObjectNode plan = JsonNodeFactory.instance.objectNode();
    plan.setAll(full);
    plan.remove(OWN_FIELDS);
    String model = fields.getOrDefault("model", full.path("model").asText());
    if (!full.path("model").asText().equals(model)) {
      plan.remove(List.of("likelihood", "moderatorTest")); // each model has its own words there
    }
    if (model.equals("exact-likelihood") && full.has("moderators")) {
      plan.remove(List.of("cluster", "robustVariance")); // which are of effects
    }
    fields.forEach(plan::put);
    return Filling.of(SYNTHESIS, plan);
  }

  /**
   * The synthesis by the model {@code bayesian} that a filled plan of this task has among others.
   */
  public static ObjectNode posterior(ObjectNode full) {
    return synthesis(full, ofModel("bayesian", full.path("measure").asText()));
  }

  /** Everything that is wrong with a synthesis of a plan of this task. */
  static List<Problem> problems(ObjectNode plan, Map<String, String> fields) {
    return SYNTHESIS.problems(synthesis(plan, fields));
  }
}
