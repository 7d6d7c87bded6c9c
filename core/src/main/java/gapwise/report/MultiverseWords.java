package gapwise.report;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.multiverse.MultiverseResult;
import gapwise.analysis.multiverse.MultiverseTask;
import gapwise.analysis.pooling.ExactModels;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisDefaults;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;

/** One body of evidence analysed in every way asked for. */
final class MultiverseWords {
  private final Telling telling;
  private final Settings settings;
  private final Optional<MultiverseResult> made;
  private final JsonNode vary;

  MultiverseWords(Telling telling, Settings settings, Result result) {
    this.telling = telling;
    this.settings = settings;
    this.made = result.part(MultiverseResult.class);
    this.vary = settings.part("vary");
  }

  void tell() {
    telling.say("multiverse");
    boolean moderated = settings.has("moderators");
    if (moderated) {
      new ModeratorWords(telling, settings).tell();
      about(settings.part("about"));
    }
    list("multiverse.model", vary.path("model"), this::model);
    boolean effects = has("random-effects") || has("common-effect");
    list("multiverse.scale", vary.path("scale"), one -> telling.phrase("scale." + one.asText()));
    // A coefficient or a difference is told on the analysis scale.
    JsonNode about = settings.part("about");
    boolean carriedBack = !moderated || !(about.has("term") || about.has("against"));
    if (carriedBack
        && (settings.is("scale", "double-arcsine") || any(vary.path("scale"), "double-arcsine"))) {
      back();
    }
    if (effects) {
      list("multiverse.cells", vary.path("emptyCells"), this::cells);
      list(
          "multiverse.spread",
          vary.path("missingSpread"),
          one -> telling.phrase("spread." + one.asText()));
    }
    if (has("random-effects")) {
      list(
          "multiverse.estimator",
          vary.path("betweenStudyVariance"),
          one -> telling.phrase("estimate." + one.asText()));
      list("multiverse.interval", vary.path("interval"), this::limits);
    }
    list("multiverse.moderator-test", vary.path("moderatorTest"), this::test);
    if (effects) {
      list("multiverse.robust", vary.path("robustVariance"), this::robust);
    }
    if (has("exact-likelihood")) {
      exact();
    }
    if (has("bayesian")) {
      new BayesianWords(telling, posterior(), Optional.empty()).priors();
    }
    telling.say("multiverse.interval-level", Map.of("percent", settings.percent()));
    vary.path("subsets").forEach(this::subset);
    if (vary.path("leaveOneOut").asBoolean()) {
      telling.say("multiverse.leave-one-out");
    }
    if (settings.has("threshold")) {
      telling.say(
          settings.has("moderators")
              ? "multiverse.threshold-of-regressions"
              : "multiverse.threshold",
          Map.of("value", settings.number("threshold")));
    }
    counted();
  }

  private void counted() {
    telling.say("multiverse.weights");
    made.map(MultiverseResult::counted)
        .ifPresent(
            counted ->
                telling.say(
                    settings.has("moderators")
                        ? "multiverse.count-of-regressions"
                        : "multiverse.count",
                    Map.of("analyses", counted.analyses(), "estimated", counted.estimated())));
    made.flatMap(one -> one.marked().own()).ifPresent(any -> own());
    if (settings.flag("list")) {
      telling.say("multiverse.list");
    }
  }

  /** The choices of the plan itself, as far as its model has them. */
  private void own() {
    String model = settings.word("model");
    List<String> choices = new ArrayList<>();
    choices.add(model(settings.part("model")));
    if (!Set.of("exact-likelihood", "bayesian").contains(model)) {
      if (settings.has("scale")) {
        choices.add(telling.phrase("scale." + settings.word("scale")));
      }
      if (SynthesisDefaults.usesContinuityCorrection(settings.plan())) {
        choices.add(cells(settings.plan()));
      }
    }
    if (model.equals("random-effects")) {
      choices.add(telling.phrase("estimate." + settings.word("betweenStudyVariance")));
    }
    if (settings.has("moderators")) {
      ownTest(model, choices);
    } else if (!Set.of("common-effect", "bayesian").contains(model)) {
      choices.add(telling.phrase("limits." + settings.word("interval")));
    }
    telling.say("multiverse.own", Map.of("settings", String.join("; ", choices)));
  }

  private void ownTest(String model, List<String> choices) {
    if (settings.has("robustVariance")) {
      choices.add(robust(settings.part("robustVariance")));
    } else if (!model.equals("common-effect")) {
      choices.add(test(settings.part("moderatorTest")));
    }
  }

  /** What of the regressions is told. */
  private void about(JsonNode about) {
    if (about.has("term")) {
      telling.say("multiverse.about.term", Map.of("term", about.get("term").asText()));
      return;
    }
    String at = ModeratorWords.values(about.path("at"));
    if (about.has("against")) {
      telling.say(
          "multiverse.about.difference",
          Map.of("values", at, "others", ModeratorWords.values(about.get("against"))));
    } else {
      telling.say("multiverse.about.mean", Map.of("values", at));
    }
  }

  private String test(JsonNode asked) {
    return telling.phrase("moderators-tested." + asked.asText());
  }

  private String robust(JsonNode asked) {
    String word = asked.asText();
    return word.equals("none")
        ? telling.phrase("multiverse.robust.none")
        : telling.phrase("multiverse.robust." + word, Map.of("cluster", settings.word("cluster")));
  }

  private boolean has(String model) {
    return any(vary.path("model"), model);
  }

  private static boolean any(JsonNode list, String word) {
    return list.valueStream().anyMatch(one -> one.asText().equals(word));
  }

  private void list(String sentence, JsonNode asked, Function<JsonNode, String> phrase) {
    if (!asked.isEmpty()) {
      telling.say(sentence, Map.of("list", Settings.joinLong(asked.valueStream().map(phrase))));
    }
  }

  private String model(JsonNode asked) {
    String word = asked.asText();
    if (word.equals("common-effect")) {
      String pooling = settings.word("pooling");
      return telling.phrase(
          "multiverse.common-effect." + (pooling.isEmpty() ? "inverse-variance" : pooling));
    }
    if (word.equals("bayesian") && !ExactModels.take(settings.word("measure"))) {
      return settings.has("scale")
          ? telling.phrase(
              "multiverse.bayesian-effects-on-scale",
              Map.of("scale", telling.phrase("scale." + settings.word("scale"))))
          : telling.phrase("multiverse.bayesian-effects");
    }
    return telling.phrase("multiverse." + word);
  }

  private String limits(JsonNode asked) {
    return telling.phrase("limits." + asked.asText());
  }

  private void back() {
    JsonNode n = settings.part("backTransformN");
    telling.say(
        "multiverse.arcsine-back",
        Map.of(
            "how",
            n.isNumber()
                ? telling.phrase("back-with.number", Map.of("patients", Settings.number(n)))
                : telling.phrase("back-with.harmonic-mean")));
  }

  private String cells(JsonNode rule) {
    JsonNode correction = rule.path("continuityCorrection");
    String tables = correction.path("tables").asText();
    String text =
        tables.equals("none")
            ? telling.phrase("cells-rule.none")
            : telling.phrase(
                "cells-rule." + tables,
                Map.of("amount", Settings.number(correction.path("amount"))));
    return rule.has("uninformativeStudies")
        ? telling.phrase(
            "cells-rule." + rule.get("uninformativeStudies").asText(), Map.of("rule", text))
        : text;
  }

  private void exact() {
    PoolingWords.exactLikelihood(telling, likelihood());
    PoolingWords.points(telling, likelihood());
    if (settings.has("moderators")) {
      telling.say("multiverse.signed-roots");
    }
    list("multiverse.exact-interval", vary.path("exactInterval"), this::limits);
  }

  /** The priors of the plan, or the usual ones. */
  private Settings posterior() {
    return new Settings(MultiverseTask.posterior(settings.plan()));
  }

  /** The settings of the exact likelihood, which a plan of another model does not fill in. */
  private Settings likelihood() {
    var plan = settings.plan().deepCopy();
    plan.remove("source");
    boolean own = settings.is("model", "exact-likelihood");
    plan.put("likelihood", own ? plan.path("likelihood").asText("conditional") : "conditional");
    plan.put("armSpread", plan.path("armSpread").asText("larger-with-intervention"));
    plan.put("quadraturePoints", plan.path("quadraturePoints").asInt(25));
    return new Settings(plan);
  }

  private void subset(JsonNode subset) {
    List<String> ways = new ArrayList<>();
    lists(subset.path("only")).forEach(v -> ways.add(values("subset.only", v)));
    lists(subset.path("without")).forEach(v -> ways.add(values("subset.without", v)));
    subset.path("atLeast").forEach(v -> ways.add(bound("subset.at-least", v)));
    subset.path("atMost").forEach(v -> ways.add(bound("subset.at-most", v)));
    telling.say(
        "multiverse.subset",
        Map.of("column", subset.get("column").asText(), "list", String.join("; ", ways)));
  }

  private static Stream<String> lists(JsonNode lists) {
    return lists
        .valueStream()
        .map(
            list ->
                String.join(
                    " or ", list.valueStream().map(v -> "\"" + v.asText() + "\"").toList()));
  }

  private String values(String name, String values) {
    return telling.phrase(name, Map.of("values", values));
  }

  private String bound(String name, JsonNode value) {
    return telling.phrase(name, Map.of("value", Settings.number(value)));
  }
}
