package gapwise.answer;

import gapwise.analysis.network.NetworkAnswer;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.figure.AxisWords;
import gapwise.figure.Block;
import gapwise.figure.Estimate;
import gapwise.figure.Forest;
import gapwise.figure.Heading;
import gapwise.figure.Limits;
import gapwise.figure.Measure;
import gapwise.figure.Provenance;
import gapwise.figure.Row;
import gapwise.figure.Span;
import gapwise.figure.Summary;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The forest plot of a result whose rows came from a table: no bones are known, only effects. */
public final class PlainForest {
  private PlainForest() {}

  /** The figure of a result that tells of studies. */
  public static Forest of(Result result, Edition edition) {
    String measure = result.plan().path("measure").asText();
    Measure shown = ModelWords.measure(result.plan(), "");
    List<Row> rows = new ArrayList<>();
    for (Result.Study study : studies(result).orElse(List.of())) {
      study.shown().ifPresent(value -> rows.add(row(study, value)));
    }
    String title = result.plan().path("title").asText("");
    String words = measure.replace('-', ' ');
    return new Forest(
        new Heading(title.isBlank() ? words : title, List.of(), "", words + " (95 %)"),
        shown,
        new AxisWords(words, "", "", List.of()),
        List.of(new Block("", rows, summary(result))),
        Optional.empty(),
        List.of(),
        List.of(),
        AnswerForest.CAUTIONS,
        new Provenance(
            result.data().studies(),
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

  private static Row row(Result.Study study, Result.Estimate value) {
    return new Row(
        study.label(),
        "",
        new Span.NotReported(),
        "",
        Estimate.of(value.estimate(), value.lower(), value.upper()),
        study.weightPercent(),
        Row.OpenEnd.NONE,
        Optional.empty());
  }

  private static Summary summary(Result result) {
    Optional<Result.Summary> pooled = SynthesisResult.of(result).summary();
    if (pooled.isEmpty()) {
      return new Summary.NotPooled("Not pooled", "No average can be given for these studies.");
    }
    Result.Shown shown = pooled.get().shown();
    Optional<Limits> prediction =
        shown.predictionLower().isPresent() && shown.predictionUpper().isPresent()
            ? Optional.of(
                new Limits(
                    shown.predictionLower().getAsDouble(), shown.predictionUpper().getAsDouble()))
            : Optional.empty();
    return new Summary.Pooled(
        "Pooled", Told.estimate(shown), prediction, Math.max(1, result.data().studies()), "");
  }
}
