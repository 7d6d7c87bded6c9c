package gapwise.answer;

import gapwise.demonstration.DemonstrationEvidence;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.Figure;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/** Figures as the invented demonstration base answers them, those that are hard to draw among. */
public final class DemonstrationFigures {
  private static final Edition EDITION = Edition.ofProgram("test");

  private DemonstrationFigures() {}

  /**
   * Figures by what they show.
   *
   * @param home an empty folder for the base
   */
  public static Map<String, Figure> byName(Path home) {
    Map<String, Figure> figures = new LinkedHashMap<>();
    try (InventedBase base = InventedBase.of(home, DemonstrationEvidence.studies())) {
      put(figures, "union of two methods", base, "union", "bone-transport", "induced-membrane");
      put(figures, "union of one method", base, "union", "bone-transport");
      put(figures, "union of all methods", base, "union");
      put(figures, "months in a frame", base, "external-fixation-time", "bone-transport");
      put(figures, "months to union of all methods", base, "time-to-union");
      put(figures, "flaps that survived", base, "flap-survival");
      for (String outcome : new String[] {"union", "time-to-union", "deep-infection"}) {
        LengthAnswer answer =
            base.answers().byLength(asked(outcome), LengthShape.of("line").orElseThrow());
        answer
            .figure(EDITION)
            .ifPresent(figure -> figures.put(outcome + " over length of missing bone", figure));
      }
    }
    return figures;
  }

  private static void put(
      Map<String, Figure> figures, String name, InventedBase base, String outcome, String... of) {
    Answer answer = base.answers().ask(asked(outcome, of));
    answer
        .result()
        .ifPresent(
            result -> {
              figures.put(name, AnswerForest.of(answer, result, EDITION));
              AnswerFunnel.of(answer, result, EDITION)
                  .ifPresent(funnel -> figures.put("funnel: " + name, funnel));
            });
  }

  private static Question asked(String outcome, String... methods) {
    return Question.about(
        Outcome.of(outcome), SearchRequest.EVERYTHING.withMethods(Set.of(methods)));
  }
}
