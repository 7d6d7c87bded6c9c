package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.network.NetworkAnswer;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.forest.Block;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.ForestRow;
import gapwise.figure.forest.ForestSummary;
import gapwise.figure.forest.Heading;
import gapwise.figure.span.Span;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.SeriesCount;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The forest plot of a result whose rows came from a table: no bones are known, only effects. */
public final class PlainForest {
  private PlainForest() {}

  /** The figure of a result that tells of studies. */
  public static Forest of(Result result, Edition edition) {
    return large(result, edition).whole();
  }

  /** The same with what of it a page draws. */
  public static Large<Forest> large(Result result, Edition edition) {
    List<Result.Study> valued =
        studies(result).orElse(List.of()).stream()
            .filter(study -> study.shown().isPresent())
            .toList();
    Forest whole = of(result, edition, valued, List.of());
    return Large.ofRows(
        whole,
        valued,
        study -> study.weightPercent().orElse(0),
        (drawn, some) -> of(result, edition, drawn, List.of(some)));
  }

  private static Forest of(
      Result result, Edition edition, List<Result.Study> drawn, List<String> some) {
    Quantity shown = ModelWords.measure(result.plan(), "");
    List<ForestRow> rows = new ArrayList<>();
    for (Result.Study study : drawn) {
      study.shown().ifPresent(value -> rows.add(row(study, value)));
    }
    String title = result.plan().path("title").asText("");
    String words = ModelWords.measureLabel(result.plan());
    return new Forest(
        new Heading(
            title.isBlank() ? words : title,
            some,
            "",
            say("answer.column-values", Map.of("values", words))),
        shown,
        new AxisWords(words, "", "", List.of()),
        List.of(new Block("", rows, summary(result))),
        Optional.empty(),
        List.of(),
        List.of(),
        AnswerForest.CAUTIONS,
        new FigureProvenance(
            series(result),
            "",
            ModelWords.model(result.plan()),
            edition.words(result.data().sha256()),
            edition.date(),
            false));
  }

  /** The rows of a result; empty if its task makes none. */
  static Optional<List<Result.Study>> studies(Result result) {
    return result
        .part(SynthesisResult.class)
        .map(SynthesisResult::studies)
        .or(() -> result.part(NetworkAnswer.class).map(NetworkAnswer::studies));
  }

  private static ForestRow row(Result.Study study, Result.Estimate value) {
    return new ForestRow(
        study.label(),
        "",
        new Span.NotReported(),
        "",
        Estimate.of(value.estimate(), value.lower(), value.upper()),
        study.weightPercent(),
        ForestRow.OpenEnd.NONE,
        Optional.empty());
  }

  private static SeriesCount series(Result result) {
    int rows = studies(result).map(List::size).orElse(0);
    int different = Math.min(rows, result.data().studies());
    return rows == 0
        ? SeriesCount.of(Math.max(1, result.data().studies()))
        : new SeriesCount(rows, different);
  }

  private static ForestSummary summary(Result result) {
    Optional<Result.Summary> pooled = SynthesisResult.of(result).summary();
    if (pooled.isEmpty()) {
      return new ForestSummary.NotPooled(
          say("answer.not-pooled"), say("answer.no-average-of-studies"));
    }
    Result.Shown shown = pooled.get().shown();
    Optional<Limits> prediction =
        shown.predictionLower().isPresent() && shown.predictionUpper().isPresent()
            ? Optional.of(
                new Limits(
                    shown.predictionLower().getAsDouble(), shown.predictionUpper().getAsDouble()))
            : Optional.empty();
    return new ForestSummary.Pooled(
        say("answer.pooled"), PooledValue.average(shown), prediction, series(result), "");
  }
}
