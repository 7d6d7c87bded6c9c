package gapwise.report;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.smallstudy.SmallStudyEffectsResult;
import gapwise.analysis.synthesis.SynthesisResult;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Tests for small-study effects, those that were made and those that were not; the funnel. */
final class SmallStudyWords {
  private static final String FILL = "trim-and-fill";

  private final Telling telling;
  private final Settings settings;
  private final SynthesisResult made;

  SmallStudyWords(Telling telling, Settings settings, SynthesisResult made) {
    this.telling = telling;
    this.settings = settings;
    this.made = made;
  }

  void tell() {
    Set<String> refused = new LinkedHashSet<>();
    List<JsonNode> asked = new ArrayList<>();
    settings.part("smallStudyEffects").forEach(asked::add);
    for (JsonNode one : new LinkedHashSet<>(asked)) {
      if (!told(one)) {
        refused.add(telling.phrase("small-name." + (one.isTextual() ? one.asText() : FILL)));
      } else if (one.isTextual()) {
        telling.say("small." + one.asText());
      } else {
        fill(one.get(FILL));
      }
    }
    if (!refused.isEmpty()) {
      telling.say("small.refused", Map.of("list", String.join(", ", refused)));
    }
    funnel();
  }

  private void fill(JsonNode fill) {
    telling.say(
        "small." + FILL,
        Map.of(
            "estimator", fill.get("estimator").asText(),
            "side", fill.get("side").asText(),
            "model", telling.phrase("fill." + fill.get("model").asText())));
  }

  private boolean told(JsonNode asked) {
    if (made.smallStudyEffects().isEmpty()) {
      return false;
    }
    SmallStudyEffectsResult found = made.smallStudyEffects().get();
    Optional<?> test =
        switch (asked.asText()) {
          case "egger" -> found.egger();
          case "egger-random" -> found.eggerRandom();
          case "begg" -> found.begg();
          case "peters" -> found.peters();
          case "harbord" -> found.harbord();
          default ->
              found.trimAndFill().stream()
                  .filter(
                      one -> one.estimator().equals(asked.at("/trim-and-fill/estimator").asText()))
                  .filter(one -> one.side().equals(asked.at("/trim-and-fill/side").asText()))
                  .filter(one -> one.model().equals(asked.at("/trim-and-fill/model").asText()))
                  .findFirst();
        };
    return test.isPresent();
  }

  private void funnel() {
    if (made.funnel().isEmpty()) {
      return;
    }
    JsonNode contours = settings.part("funnel").path("contours");
    if (made.funnel().get().contours().isEmpty() || contours.isEmpty()) {
      telling.say("funnel");
    } else {
      telling.say("funnel.contours", Map.of("list", Settings.numbers(contours)));
    }
  }
}
