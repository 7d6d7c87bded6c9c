package gapwise.report;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Map;

/** The moderators of a plan, and values of them. */
final class ModeratorWords {
  private final Telling telling;
  private final Settings settings;

  ModeratorWords(Telling telling, Settings settings) {
    this.telling = telling;
    this.settings = settings;
  }

  /** Each moderator. */
  void tell() {
    settings.part("moderators").forEach(this::moderator);
  }

  private void moderator(JsonNode asked) {
    if (asked.isTextual()) {
      telling.say("moderator.plain", Map.of("column", asked.asText()));
    } else if (asked.has("product")) {
      telling.say(
          "moderator.product",
          Map.of(
              "first", asked.get("product").get(0).asText(),
              "second", asked.get("product").get(1).asText()));
    } else {
      column(asked, asked.get("column").asText());
    }
  }

  private void column(JsonNode asked, String column) {
    if (asked.has("reference")) {
      telling.say(
          "moderator.category", Map.of("column", column, "level", asked.get("reference").asText()));
    } else if (asked.has("centre")) {
      telling.say(
          "moderator.centred",
          Map.of("column", column, "centre", Settings.number(asked.get("centre"))));
    } else if (asked.path("spline").has("knots")) {
      telling.say(
          "moderator.spline-knots",
          Map.of("column", column, "list", Settings.numbers(asked.get("spline").get("knots"))));
    } else {
      telling.say(
          "moderator.spline-count",
          Map.of("column", column, "knots", asked.path("spline").path("count").asText()));
    }
  }

  /** Values of some of them, by column. */
  static String values(JsonNode values) {
    return Settings.join(
        values.properties().stream()
            .map(
                one ->
                    "\""
                        + one.getKey()
                        + "\" of "
                        + (one.getValue().isNumber()
                            ? Settings.number(one.getValue())
                            : one.getValue().asText())));
  }
}
