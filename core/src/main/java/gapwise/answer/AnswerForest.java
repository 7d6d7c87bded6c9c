package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.forest.Block;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.ForestRow;
import gapwise.figure.forest.ForestSummary;
import gapwise.figure.forest.Heading;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.selection.SelectedRow;
import gapwise.sentence.Counted;
import gapwise.wording.Defects;
import gapwise.wording.Values;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The forest plot of an answer. */
public final class AnswerForest {
  /** What must stand beside every pooled result. */
  public static final List<String> CAUTIONS =
      List.of(say("answer.not-advice"), say("answer.mostly-uncontrolled"));

  /** Said where methods stand side by side. */
  public static final String NO_COMPARISON = say("answer.no-comparison");

  private final Answer answer;
  private final Outcome outcome;
  private final Quantity measure;
  private final List<Blocks.Block> blocks;
  private final Edition edition;

  private AnswerForest(Answer answer, Result result, Edition edition) {
    this.answer = answer;
    this.outcome = answer.question().outcome();
    this.measure = Told.measure(outcome);
    this.blocks = Blocks.of(answer, result);
    this.edition = edition;
  }

  /**
   * The figure of an answer that has a result.
   *
   * @param edition state of program and evidence base
   */
  public static Forest of(Answer answer, Result result, Edition edition) {
    return new AnswerForest(answer, result, edition).forest(result);
  }

  private Forest forest(Result result) {
    List<String> sentences =
        blocks.size() > 1
            ? List.of(NO_COMPARISON)
            : Blocks.told(answer, result).stream().map(Told::sentence).toList();
    return new Forest(
        new Heading(QuestionWords.of(answer.question()), sentences, counts(), values()),
        measure,
        axis(outcome, measure),
        blocks.stream().map(this::block).toList(),
        Optional.empty(),
        List.of(),
        notes(),
        CAUTIONS,
        provenance(result));
  }

  private String counts() {
    return say(
        measure.kind() == Quantity.Kind.OF_100
            ? "answer.column-counted"
            : "answer.column-patients");
  }

  private String values() {
    if (measure.kind() == Quantity.Kind.OF_100) {
      return say("answer.column-of-hundred");
    }
    return measure.unit().isEmpty()
        ? say("answer.column-mean")
        : say("answer.column-values", Map.of("values", measure.unit()));
  }

  /** What the numbers of an outcome are and which way is better. */
  static AxisWords axis(Outcome outcome, Quantity measure) {
    String better =
        switch (outcome.better()) {
          case MORE -> say("answer.better-for-patients");
          case LESS, NEITHER -> "";
        };
    String lowerBetter =
        outcome.better() == Outcome.Better.LESS ? say("answer.better-for-patients") : "";
    String heading =
        measure.kind() == Quantity.Kind.OF_100
            ? outcome
                .happened()
                .map(what -> say("answer.axis-such-of-hundred", Map.of("what", what)))
                .orElseGet(() -> say("answer.axis-of-hundred"))
            : outcome.unit().map(unit -> unit.symbol()).orElse(outcome.label());
    return new AxisWords(heading, lowerBetter, better, List.of());
  }

  private Block block(Blocks.Block block) {
    return new Block(
        block.method().label(),
        block.lines().stream()
            .flatMap(line -> estimate(line).map(value -> row(line, value)).stream())
            .toList(),
        summary(block));
  }

  /** What the result shows; else the mean or median alone, so that no reported value is hidden. */
  private Optional<Estimate> estimate(Blocks.Line line) {
    return shown(outcome, line);
  }

  static Optional<Estimate> shown(Outcome outcome, Blocks.Line line) {
    return line.estimate().or(() -> centre(outcome, line.row()).map(Estimate::alone));
  }

  private static Optional<Double> centre(Outcome outcome, SelectedRow row) {
    if (row.value() instanceof ReportedValue.Quantity quantity) {
      OptionalDouble centre =
          quantity.summary().in(outcome.unit().orElse(quantity.summary().unit())).centre();
      return centre.isPresent() ? Optional.of(centre.getAsDouble()) : Optional.empty();
    }
    return Optional.empty();
  }

  private ForestRow row(Blocks.Line line, Estimate estimate) {
    SelectedRow row = line.row();
    boolean low = measure.kind() == Quantity.Kind.OF_100 && estimate.value() == 0;
    boolean high = measure.kind() == Quantity.Kind.OF_100 && estimate.value() == 1;
    return new ForestRow(
        row.label(),
        detail(line),
        Defects.span(row.defect()),
        counted(row),
        estimate,
        line.study().weightPercent(),
        low ? ForestRow.OpenEnd.LOW : high ? ForestRow.OpenEnd.HIGH : ForestRow.OpenEnd.NONE,
        Optional.of(StudyAddress.of(row.study().id())),
        row.study().citation().line());
  }

  /**
   * "27 of 31" for events, excellent and good of all for grades; how many patients or limbs a mean
   * speaks of.
   */
  private String counted(SelectedRow row) {
    if (row.value() instanceof ReportedValue.Quantity) {
      return row.speaksOf().isPresent()
          ? Counted.grouped(row.speaksOf().getAsInt())
          : say("wording.not-stated");
    }
    if (row.value() instanceof ReportedValue.Events events && events.count().isComplete()) {
      return Values.ofTotal(events.count().events().getAsInt(), events.count().total().getAsInt());
    }
    if (row.value() instanceof ReportedValue.Categories grades) {
      return Values.ofTotal(grades.good(), grades.sum());
    }
    return Values.of(outcome, row.value()).counted();
  }

  private static String detail(Blocks.Line line) {
    SelectedRow row = line.row();
    List<String> parts = new ArrayList<>();
    row.study().design().ifPresent(design -> parts.add(design.label()));
    if (row.value() instanceof ReportedValue.Quantity quantity
        && quantity.summary().mean().isEmpty()) {
      parts.add(say("answer.row-median"));
    }
    if (line.meanOfZero()) {
      parts.add(say("answer.row-mean-of-zero"));
    }
    switch (row.basis()) {
      case REPORTED -> {}
      case COUNTED_BACK -> parts.add(say("answer.row-counted-back"));
      case FROM_PATIENTS -> parts.add(say("answer.row-from-patients"));
      case FROM_PATIENTS_IN_RANGE -> parts.add(say("answer.row-patients-in-range"));
      case SUBGROUP ->
          row.report()
              .flatMap(report -> report.subgroup())
              .ifPresent(part -> parts.add(say("answer.row-only", Map.of("part", part.words()))));
    }
    row.otherSideWords().ifPresent(parts::add);
    return String.join(", ", parts);
  }

  private ForestSummary summary(Blocks.Block block) {
    int pooled = block.pooled().size();
    if (block.onlyLimit().isPresent() && block.lines().size() > 1) {
      return new ForestSummary.NotPooled(
          say("answer.not-pooled"),
          say(
              block.onlyLimit().getAsDouble() > 0
                  ? "answer.nobody-without-it"
                  : "answer.nobody-with-it"));
    }
    if (block.meansOfZero() == block.lines().size()) {
      return new ForestSummary.NotPooled(
          say("answer.not-pooled"), say("answer.zero-in-every-series"));
    }
    if (pooled < 2) {
      return new ForestSummary.NotPooled(
          say("answer.not-pooled"), tooFew(pooled, block.lines().size()));
    }
    if (block.summary().isEmpty()) {
      return new ForestSummary.NotPooled(say("answer.not-pooled"), say("answer.no-average"));
    }
    Result.Shown shown = block.summary().get().shown();
    Optional<Limits> prediction =
        Told.tellsNewCentre(pooled)
                && shown.predictionLower().isPresent()
                && shown.predictionUpper().isPresent()
            ? Optional.of(
                new Limits(
                    shown.predictionLower().getAsDouble(), shown.predictionUpper().getAsDouble()))
            : Optional.empty();
    return new ForestSummary.Pooled(
        say("answer.pooled"), Told.estimate(shown), prediction, pooled, People.of(block.pooled()));
  }

  private static String tooFew(int pooled, int series) {
    if (pooled == 0) {
      return say("answer.no-usable-series");
    }
    return say(series == 1 ? "answer.one-series-alone" : "answer.one-usable-series");
  }

  private List<String> notes() {
    List<String> notes = new ArrayList<>();
    outcome.caution().ifPresent(notes::add);
    answer
        .selection()
        .clock()
        .ifPresent(clock -> notes.add(say("answer.counted-from", Map.of("clock", clock.label()))));
    answer.result().flatMap(result -> Blocks.withoutZeros(answer, result)).ifPresent(notes::add);
    int leftOut = answer.selection().leftOut().size();
    if (leftOut > 0) {
      notes.add(say("answer.left-out", Map.of("values", leftOut)));
    }
    return notes;
  }

  private FigureProvenance provenance(Result result) {
    List<SelectedRow> pooled = blocks.stream().flatMap(block -> block.pooled().stream()).toList();
    boolean invented = answer.selection().rows().stream().anyMatch(row -> row.study().invented());
    List<SelectedRow> shown =
        blocks.stream().flatMap(block -> block.lines().stream()).map(Blocks.Line::row).toList();
    return new FigureProvenance(
            pooled.size(),
            People.of(pooled),
            ModelWords.model(result.plan()),
            edition.words(result.data().sha256()),
            edition.date(),
            invented)
        .citing(Cited.of(shown));
  }
}
