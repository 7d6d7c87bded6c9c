package gapwise.report;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.curves.ComparisonResult;
import gapwise.analysis.curves.CurveResult;
import gapwise.analysis.curves.CurvesResult;
import gapwise.analysis.result.Result;
import java.util.LinkedHashMap;
import java.util.Map;

/** Curves of times until an event, as reported or rebuilt, compared and pooled. */
final class CurveWords {
  private final Telling telling;
  private final Settings settings;
  private final CurvesResult made;

  CurveWords(Telling telling, Settings settings, Result result) {
    this.telling = telling;
    this.settings = settings;
    this.made = result.part(CurvesResult.class).orElseThrow();
  }

  void tell() {
    if (settings.is("task", "reconstruct-curve")) {
      rebuilt();
    } else {
      telling.say("curves.times");
    }
    telling.say(
        "curves.counts",
        Map.of(
            "curves", made.curves().size(),
            "patients", "" + made.curves().stream().mapToInt(CurveResult::patients).sum(),
            "events", "" + made.curves().stream().mapToInt(CurveResult::events).sum()));
    telling.say("curves.estimate", Map.of("percent", settings.percent()));
    if (settings.has("horizon")) {
      telling.say("curves.horizon", Map.of("time", settings.number("horizon")));
    }
    if (settings.part("survivalAt").size() > 0) {
      telling.say("curves.at", Map.of("list", Settings.numbers(settings.part("survivalAt"))));
    }
    made.comparison().ifPresent(this::compared);
    if (settings.has("pooledCurve")) {
      pooled();
    }
  }

  private void rebuilt() {
    telling.say("curves.reconstructed");
    telling.say("curves.as." + settings.word("as"));
    telling.say(settings.has("numbersAtRisk") ? "curves.at-risk" : "curves.no-at-risk");
    settings.part("groups").properties().forEach(one -> group(one.getKey(), one.getValue()));
  }

  private void group(String name, JsonNode reported) {
    Map<String, String> places = new LinkedHashMap<>();
    places.put("group", name);
    places.put("patients", Settings.number(reported.get("patients")));
    StringBuilder sentence = new StringBuilder("curves.group");
    for (String field : new String[] {"events", "median"}) {
      if (reported.has(field)) {
        places.put(field, Settings.number(reported.get(field)));
        sentence.append('-').append(field);
      }
    }
    telling.say(sentence.toString(), places);
  }

  private void compared(ComparisonResult comparison) {
    Map<String, Object> places = new LinkedHashMap<>();
    places.put("group", comparison.group());
    places.put("against", comparison.against());
    comparison.strata().ifPresent(strata -> places.put("strata", strata));
    telling.say(
        comparison.strata().isPresent() ? "curves.compare-strata" : "curves.compare", places);
    if (comparison.logHazardRatio().isEmpty()) {
      telling.say("curves.no-ratio");
    }
    if (comparison.restrictedMeanDifference().isPresent()) {
      telling.say("curves.compare-means");
    }
  }

  private void pooled() {
    telling.say("curves.pooled");
    JsonNode asked = settings.part("pooledCurve");
    if (asked.has("groups")) {
      telling.say(
          "curves.pooled-groups",
          Map.of(
              "list",
              Settings.join(
                  asked.get("groups").valueStream().map(one -> "\"" + one.asText() + "\""))));
    }
    if (asked.has("times")) {
      telling.say("curves.pooled-times", Map.of("list", Settings.numbers(asked.get("times"))));
    }
  }
}
