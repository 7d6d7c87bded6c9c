package gapwise.report;

import gapwise.analysis.result.Origin;
import gapwise.analysis.result.Result;
import java.util.Map;

/** With which program, and on which state of the evidence. */
final class SoftwareWords {
  private final Telling telling;
  private final Settings settings;
  private final Origin origin;

  SoftwareWords(Telling telling, Settings settings, Origin origin) {
    this.telling = telling;
    this.settings = settings;
    this.origin = origin;
  }

  void tell(Result result) {
    telling.say(
        "software",
        Map.of(
            "program", Origin.PROGRAM,
            "version", origin.version(),
            "java", String.valueOf(Runtime.version().feature())));
    if (Origin.selects(settings.plan()) && origin.change().isPresent()) {
      String change = String.valueOf(origin.change().getAsLong());
      origin
          .date()
          .ifPresentOrElse(
              date ->
                  telling.say(
                      "evidence.state-date", Map.of("change", change, "date", date.toString())),
              () -> telling.say("evidence.state", Map.of("change", change)));
    }
    if (settings.has("source") && !result.data().sha256().isEmpty()) {
      telling.say("evidence.hash", Map.of("hash", result.data().sha256()));
    }
    telling.say("appendix");
  }
}
