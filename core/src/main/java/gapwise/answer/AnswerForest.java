package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.forest.Block;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.ForestRow;
import gapwise.figure.forest.ForestSummary;
import gapwise.figure.forest.Heading;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Quantity;
import gapwise.selection.CentresReported;
import gapwise.selection.LengthNotes;
import gapwise.selection.Prices;
import gapwise.selection.SelectedRow;
import gapwise.wording.Defects;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** The forest plot of an answer. */
public final class AnswerForest {
  /** What must stand beside every pooled result. */
  public static final List<String> CAUTIONS =
      List.of(say("answer.not-advice"), say("answer.mostly-uncontrolled"));

  /** Said where methods stand side by side. */
  public static final String NO_COMPARISON = say("answer.no-comparison");

  /**
   * Said where what a result pools by itself stands side by side: methods, or words of a detail.
   */
  public static String noComparison(Result result) {
    return Blocks.split(result)
        .map(kind -> say("answer.no-comparison-of-details", Map.of("detail", kind.shortLabel())))
        .orElse(NO_COMPARISON);
  }

  private final Answer answer;
  private final Outcome outcome;
  private final Quantity measure;
  private final RowWords words;
  private final List<Blocks.Block> blocks;
  private final Edition edition;

  private AnswerForest(Answer answer, Result result, Edition edition) {
    this.answer = answer;
    this.outcome = answer.question().outcome();
    this.measure = Told.measure(outcome, answer.selection().rows());
    this.words = new RowWords(outcome, answer.question().conversions());
    this.blocks = Blocks.of(answer, result);
    this.edition = edition;
  }

  /**
   * The figure of an answer that has a result.
   *
   * @param edition state of program and evidence base
   */
  public static Forest of(Answer answer, Result result, Edition edition) {
    return large(answer, result, edition).whole();
  }

  /** The same with what of it a page draws. */
  public static Large<Forest> large(Answer answer, Result result, Edition edition) {
    AnswerForest figure = new AnswerForest(answer, result, edition);
    List<Integer> sizes = figure.blocks.stream().map(block -> block.lines().size()).toList();
    int all = sizes.stream().mapToInt(Integer::intValue).sum();
    Forest whole = figure.forest(result, all, Optional.empty());
    if (all <= Large.MOST_DRAWN) {
      return new Large<>(whole);
    }
    int most = Large.mostOfEach(sizes);
    int drawn = sizes.stream().mapToInt(size -> Math.min(size, most)).sum();
    String which =
        sizes.size() == 1
            ? say("answer.drawn-by-patients", Map.of("drawn", drawn, "series", all))
            : say("answer.drawn-of-methods", Map.of("drawn", drawn, "series", all, "most", most));
    String some = Large.withPooled(which, whole);
    return new Large<>(figure.forest(result, most, Optional.of(some)), whole, Optional.of(some));
  }

  /**
   * The figure with at most so many series of each method, those with the most patients.
   *
   * @param some says that they are not all
   */
  private Forest forest(Result result, int most, Optional<String> some) {
    List<String> sentences =
        new ArrayList<>(
            blocks.size() > 1
                ? List.of(noComparison(result))
                : Blocks.told(answer, result).stream().map(Told::sentence).toList());
    some.ifPresent(sentences::add);
    return new Forest(
        new Heading(QuestionWords.of(answer.question()), sentences, counts(), values()),
        measure,
        axis(outcome, measure),
        blocks.stream().map(block -> block(block, most)).toList(),
        Optional.empty(),
        List.of(),
        notes(),
        cautions(),
        provenance(result));
  }

  private String counts() {
    if (blocks.stream().anyMatch(Blocks.Block::countsEvents)) {
      return say("answer.column-events");
    }
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
            : measure.unit().isEmpty() ? outcome.label() : measure.unit();
    return new AxisWords(heading, lowerBetter, better, List.of());
  }

  private Block block(Blocks.Block block, int most) {
    return new Block(
        block.of().label(),
        Large.largest(block.lines(), most, line -> line.row().speaksOf().orElse(0)).stream()
            .flatMap(line -> estimate(line).map(value -> row(line, value)).stream())
            .toList(),
        summary(block));
  }

  /** What the result shows; else the mean or median alone, so that no reported value is hidden. */
  private Optional<Estimate> estimate(Blocks.Line line) {
    return shown(outcome, line);
  }

  static Optional<Estimate> shown(Outcome outcome, Blocks.Line line) {
    OptionalDouble centre = CentresReported.centre(outcome, line.row());
    return line.estimate()
        .or(
            () ->
                centre.isPresent()
                    ? Optional.of(Estimate.alone(centre.getAsDouble()))
                    : Optional.empty());
  }

  private ForestRow row(Blocks.Line line, Estimate estimate) {
    SelectedRow row = line.row();
    boolean low = measure.kind() == Quantity.Kind.OF_100 && estimate.value() == 0;
    boolean high = measure.kind() == Quantity.Kind.OF_100 && estimate.value() == 1;
    return new ForestRow(
        row.label(),
        words.detail(line),
        Defects.span(row.defect()),
        words.counted(row),
        estimate,
        line.study().weightPercent(),
        low ? ForestRow.OpenEnd.LOW : high ? ForestRow.OpenEnd.HIGH : ForestRow.OpenEnd.NONE,
        Optional.of(StudyAddress.of(row.study().id())),
        row.study().citation().line());
  }

  private ForestSummary summary(Blocks.Block block) {
    int pooled = block.pooled().size();
    if (block.onlyLimit().isPresent() && block.lines().size() > 1) {
      return new ForestSummary.NotPooled(
          say("answer.not-pooled"),
          say(
              block.countsEvents()
                  ? "answer.no-event-in-any-series"
                  : block.onlyLimit().getAsDouble() > 0
                      ? "answer.nobody-without-it"
                      : "answer.nobody-with-it"));
    }
    if (block.meansOfZero() == block.lines().size()) {
      return new ForestSummary.NotPooled(
          say("answer.not-pooled"), say("answer.zero-in-every-series"));
    }
    if (pooled < 2) {
      return new ForestSummary.NotPooled(say("answer.not-pooled"), tooFew(pooled, block));
    }
    if (block.open().isPresent()) {
      return new ForestSummary.NotPooled(say("answer.not-pooled"), say("answer.average-open"));
    }
    if (block.summary().isEmpty()) {
      return new ForestSummary.NotPooled(say("answer.not-pooled"), say("answer.no-average"));
    }
    Result.Shown shown = block.summary().get().shown();
    return new ForestSummary.Pooled(
        say("answer.pooled"),
        PooledValue.average(shown),
        block.newCentre(),
        People.series(block.pooled()),
        People.of(block.pooled()));
  }

  private static String tooFew(int pooled, Blocks.Block block) {
    if (pooled == 0 && block.alone().isEmpty()) {
      return say("answer.no-usable-series");
    }
    return say(block.lines().size() == 1 ? "answer.one-series-alone" : "answer.one-usable-series");
  }

  private List<String> cautions() {
    return Stream.concat(outcome.caution().stream(), CAUTIONS.stream()).toList();
  }

  private List<String> notes() {
    List<String> notes = new ArrayList<>();
    allReport(notes);
    answer
        .selection()
        .clock()
        .ifPresent(clock -> notes.add(say("answer.counted-from", Map.of("clock", clock.label()))));
    answer.result().flatMap(result -> Blocks.withoutZeros(answer, result)).ifPresent(notes::add);
    answer.selection().notes().stream()
        .filter(note -> note.code().equals(LengthNotes.NOT_SAID))
        .forEach(note -> notes.add(note.message()));
    Prices.of(outcome, answer.selection().rows()).map(Prices::sentence).ifPresent(notes::add);
    int leftOut = answer.selection().leftOut().size();
    if (leftOut > 0) {
      notes.add(say("answer.left-out", Map.of("values", leftOut)));
    }
    return notes;
  }

  /** What all series of each method report, those too that no average can take. */
  private void allReport(List<String> notes) {
    for (Blocks.Block block : blocks) {
      CentresTold.of(outcome, block)
          .map(
              told ->
                  blocks.size() == 1
                      ? told
                      : say(
                          "answer.of-method",
                          Map.of("method", block.of().shortLabel(), "told", told)))
          .ifPresent(notes::add);
    }
  }

  private FigureProvenance provenance(Result result) {
    List<SelectedRow> pooled = blocks.stream().flatMap(block -> block.pooled().stream()).toList();
    boolean invented = answer.selection().rows().stream().anyMatch(row -> row.study().invented());
    List<SelectedRow> shown =
        blocks.stream().flatMap(block -> block.lines().stream()).map(Blocks.Line::row).toList();
    List<SelectedRow> told = pooled.isEmpty() ? shown : pooled;
    return new FigureProvenance(
            People.series(told),
            People.of(told),
            ModelWords.model(result.plan()),
            edition.words(result.data().sha256()),
            edition.date(),
            invented)
        .citing(Cited.of(shown));
  }
}
