package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.figure.Figure;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.funnel.Funnel;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Every figure of a result by its name: {@code forest}, {@code funnel}, {@code curves}. */
public final class ResultFigures {
  private ResultFigures() {}

  /**
   * The figures in the order in which they are offered; none for a task that has nothing to draw.
   *
   * @param answer the rows behind the result, where it is about an evidence base
   */
  public static Map<String, Figure> of(Result result, Optional<Answer> answer, Edition edition) {
    // A table sent with its plan is no part of the evidence base, whatever state that is in.
    Edition from = answer.isPresent() ? edition : Edition.ofProgram(edition.program());
    Map<String, Figure> figures = new LinkedHashMap<>();
    if (PlainForest.studies(result).isPresent()) {
      figures.put(
          "forest",
          answer
              .map(rows -> AnswerForest.large(rows, result, from))
              .orElseGet(() -> PlainForest.large(result, from)));
    }
    answer
        .map(rows -> AnswerFunnel.large(rows, result, from))
        .orElseGet(() -> funnel(result, from))
        .ifPresent(funnel -> figures.put("funnel", funnel));
    AnswerCurves.of(result, from).ifPresent(curves -> figures.put("curves", curves));
    return figures;
  }

  private static Optional<Large<Funnel>> funnel(Result result, Edition edition) {
    String measure = ModelWords.measureLabel(result.plan());
    String title = result.plan().path("title").asText("");
    return AnswerFunnel.large(
        result,
        title.isBlank() ? measure : title,
        new AxisWords(measure.isBlank() ? say("funnel.axis") : measure, "", "", List.of()),
        edition,
        false);
  }
}
