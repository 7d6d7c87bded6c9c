package gapwise.analysis.multiverse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.pooling.ExactModels;
import gapwise.analysis.synthesis.SynthesisDefaults;
import gapwise.effect.Measures;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What a multiverse varies unless the plan says it. Without {@code vary}: everything a careful
 * analyst could defend for the measure, and what the plan itself chooses. With it: only what it
 * names, all else as the plan has it. docs/methods/multiverse.md gives the reasons.
 */
final class VaryDefaults {
  private static final List<String> ESTIMATORS =
      List.of(
          "restricted-maximum-likelihood",
          "paule-mandel",
          "dersimonian-laird",
          "two-step-dersimonian-laird",
          "hedges",
          "sidik-jonkman");

  private static final List<String> INTERVALS =
      List.of("hartung-knapp", "hartung-knapp-never-narrower", "normal", "profile-likelihood");

  /** The one that pages take is the first. */
  private static final List<String> EXACT_INTERVALS =
      List.of(OwnSettings.EXACT_INTERVAL_OF_PAGES, "normal");

  /** Scales on which an arm without, or with only, events needs no special treatment or little. */
  private static final Map<String, List<String>> SCALES =
      Map.of(
          "proportion", List.of("logit", "arcsine", "double-arcsine"),
          "mean", List.of("raw", "log"),
          "incidence-rate", List.of("log", "square-root"));

  private static final Set<String> RATIOS =
      Set.of("odds-ratio", "risk-ratio", "incidence-rate-ratio", "ratio-of-means");

  private static final Set<String> DIFFERENCES =
      Set.of("risk-difference", "mean-difference", "standardised-mean-difference", "correlation");

  private final ObjectNode full;
  private final JsonNode asked;
  private final boolean everything;

  /** A coefficient or a difference means something else on each scale. */
  private final boolean hasOneScale;

  private VaryDefaults(ObjectNode full) {
    this.full = full;
    this.everything = !full.has("vary");
    this.asked = full.path("vary");
    this.hasOneScale = isDifference(full);
  }

  /** Whether a plan asks for a coefficient, or for a difference of two means, of a regression. */
  static boolean isDifference(ObjectNode full) {
    JsonNode about = full.path("about");
    return full.has("moderators") && (about.has("term") || about.has("against"));
  }

  /** Fills in {@code vary}, {@code threshold} and {@code list} of a plan otherwise filled in. */
  static void fill(ObjectNode full) {
    ObjectNode vary = new VaryDefaults(full).filled();
    full.set("vary", vary);
    noEffect(full).ifPresent(value -> full.put("threshold", value));
    full.put("list", full.path("list").asBoolean(false));
  }

  private ObjectNode filled() {
    String measure = text("measure");
    ObjectNode vary = JsonNodeFactory.instance.objectNode();
    words(vary, "model", models(measure));
    if (Measures.scales(measure).size() > 1) {
      words(
          vary,
          "scale",
          hasOneScale ? List.of(text("scale")) : SCALES.getOrDefault(measure, List.of()));
    }
    emptyCells(vary);
    missingSpread(vary);
    if (has(vary, "model", "random-effects")) {
      words(vary, "betweenStudyVariance", ESTIMATORS);
    }
    if (full.has("moderators")) {
      moderatorTests(vary);
      robustVariances(vary);
    } else {
      if (has(vary, "model", "random-effects")) {
        words(vary, "interval", INTERVALS);
      }
      if (has(vary, "model", "exact-likelihood")) {
        exactIntervals(vary);
      }
    }
    if (asked.has("subsets")) {
      vary.set("subsets", asked.get("subsets"));
    }
    vary.put("leaveOneOut", asked.path("leaveOneOut").asBoolean(everything));
    asked.fields().forEachRemaining(field -> vary.putIfAbsent(field.getKey(), field.getValue()));
    return vary;
  }

  private List<String> models(String measure) {
    if (full.has("moderators")) {
      String usual = Measures.scales(measure).get(0);
      boolean besideExact = !hasOneScale || full.path("scale").asText(usual).equals(usual);
      return ExactModels.take(measure) && besideExact
          ? List.of("random-effects", "exact-likelihood")
          : List.of("random-effects");
    }
    if (ExactModels.take(measure)) {
      return List.of("random-effects", "exact-likelihood", "bayesian");
    }
    return measure.equals("mean")
        ? List.of("random-effects", "bayesian")
        : List.of("random-effects");
  }

  /** What is asked; else what can be defended and the plan's own; else the plan's own. */
  private void words(ObjectNode vary, String field, List<String> defensible) {
    if (asked.has(field)) {
      vary.set(field, asked.get(field));
      return;
    }
    Set<String> words = new LinkedHashSet<>(everything ? defensible : List.of());
    if (full.has(field) && belongs(field)) {
      words.add(text(field));
    }
    if (words.isEmpty()) {
      words.add(defensible.get(0));
    }
    ArrayNode list = vary.putArray(field);
    words.forEach(list::add);
  }

  /** Tests: asked, defensible, the plan's own; else the usual one of each model that has none. */
  private void moderatorTests(ObjectNode vary) {
    if (asked.has("moderatorTest")) {
      vary.set("moderatorTest", asked.get("moderatorTest"));
      return;
    }
    List<String> words =
        everything
            ? ModeratorTests.allOf(PlanHead.texts(vary.get("model")))
            : ModeratorTests.oneOf(
                PlanHead.texts(vary.get("model")), text("model"), text("moderatorTest"));
    if (!words.isEmpty()) {
      ArrayNode list = vary.putArray("moderatorTest");
      words.forEach(list::add);
    }
  }

  /** Where clusters are named: the plan's own, and without {@code vary} that of the model too. */
  private void robustVariances(ObjectNode vary) {
    if (asked.has("robustVariance")) {
      vary.set("robustVariance", asked.get("robustVariance"));
      return;
    }
    boolean effects = has(vary, "model", "random-effects") || has(vary, "model", "common-effect");
    if (full.has("cluster") && effects) {
      Set<String> words = new LinkedHashSet<>(everything ? List.of(Vary.MODELS_OWN) : List.of());
      words.add(full.path("robustVariance").asText("cr2"));
      ArrayNode list = vary.putArray("robustVariance");
      words.forEach(list::add);
    }
  }

  /** Intervals of the exact likelihood: asked, defensible, the plan's own; else the normal one. */
  private void exactIntervals(ObjectNode vary) {
    if (asked.has("exactInterval")) {
      vary.set("exactInterval", asked.get("exactInterval"));
      return;
    }
    Set<String> words = new LinkedHashSet<>(everything ? EXACT_INTERVALS : List.of());
    if (text("model").equals("exact-likelihood")) {
      words.add(text("interval"));
    }
    if (words.isEmpty()) {
      words.add("normal");
    }
    ArrayNode list = vary.putArray("exactInterval");
    words.forEach(list::add);
  }

  /** An interval or estimator of a plan with another model is none for random effects. */
  private boolean belongs(String field) {
    boolean ofRandomEffects = field.equals("interval") || field.equals("betweenStudyVariance");
    return !ofRandomEffects || text("model").equals("random-effects");
  }

  private void emptyCells(ObjectNode vary) {
    if (asked.has("emptyCells")) {
      ArrayNode rules = vary.putArray("emptyCells");
      asked.get("emptyCells").forEach(rule -> rules.add(filled(rule)));
      return;
    }
    boolean used =
        vary.has("scale")
            ? vary.get("scale").valueStream().anyMatch(scale -> uses(scale.asText()))
            : uses("");
    if (!used) {
      return;
    }
    Set<ObjectNode> rules = new LinkedHashSet<>();
    if (everything) {
      rules.add(rule("with-an-empty-cell", "leave-out"));
      rules.add(rule("every-if-one-is-empty", "leave-out"));
      if (RATIOS.contains(text("measure"))) {
        rules.add(rule("with-an-empty-cell", "keep"));
      }
    }
    rules.add(filled(full));
    ArrayNode list = vary.putArray("emptyCells");
    rules.forEach(list::add);
  }

  /** What is done about means without a standard deviation has a bearing on single means alone. */
  private void missingSpread(ObjectNode vary) {
    if (!asked.has("missingSpread") && everything && text("measure").equals("mean")) {
      vary.putArray("missingSpread").add(MultiverseChoices.LEAVE_OUT).add(MultiverseChoices.BORROW);
    } else if (asked.has("missingSpread")) {
      vary.set("missingSpread", asked.get("missingSpread"));
    }
  }

  private boolean uses(String scale) {
    ObjectNode plan = full.objectNode();
    plan.put("measure", text("measure"));
    plan.put("scale", scale);
    return SynthesisDefaults.usesContinuityCorrection(plan);
  }

  private ObjectNode rule(String tables, String uninformative) {
    ObjectNode rule = full.objectNode();
    rule.putObject("continuityCorrection").put("tables", tables);
    rule.put("uninformativeStudies", uninformative);
    return filled(rule);
  }

  /** The fields of a plan about empty cells, with what they leave out. */
  private ObjectNode filled(JsonNode fields) {
    ObjectNode rule = full.objectNode();
    rule.set(
        "continuityCorrection",
        SynthesisDefaults.continuityCorrection(fields.path("continuityCorrection")));
    if (SynthesisDefaults.comparesCounts(full)) {
      rule.put("uninformativeStudies", fields.path("uninformativeStudies").asText("leave-out"));
    }
    return rule;
  }

  private static boolean has(ObjectNode vary, String field, String word) {
    return vary.get(field).valueStream().anyMatch(one -> one.asText().equals(word));
  }

  /** The value of no difference between two groups, where nothing else is asked. */
  private static java.util.OptionalInt noEffect(ObjectNode full) {
    String measure = full.path("measure").asText();
    boolean ratio = RATIOS.contains(measure) || full.path("reportedAs").asText().equals("ratio");
    if (isDifference(full) && !full.has("threshold")) {
      return java.util.OptionalInt.of(0);
    }
    if (full.has("threshold") || !(ratio || DIFFERENCES.contains(measure))) {
      return java.util.OptionalInt.empty();
    }
    return java.util.OptionalInt.of(ratio ? 1 : 0);
  }

  private String text(String field) {
    return full.path(field).asText();
  }
}
