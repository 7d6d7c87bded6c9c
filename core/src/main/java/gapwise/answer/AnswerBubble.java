package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.moderators.RegressionResult;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.evidence.DefectLength;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.FigureProvenance;
import gapwise.figure.bubble.Bubble;
import gapwise.figure.bubble.BubblePatient;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.selection.Prices;
import gapwise.selection.SelectedRow;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** The figure of an outcome over the length of missing bone. */
public final class AnswerBubble {
  /** What must stand beside every line through means of series. */
  public static final String ECOLOGICAL = say("answer.line-through-averages");

  /** Said where the series of several methods share one line. */
  public static final String SHARED_LINE = say("answer.shared-line");

  /** Below this many series a line is told with a warning (Cochrane Handbook, chapter 10). */
  private static final int FEWEST_TO_TRUST = 10;

  private final LengthAnswer asked;
  private final Answer answer;
  private final Result result;
  private final Outcome outcome;
  private final Quantity measure;
  private final List<Blocks.Line> lines;

  private AnswerBubble(LengthAnswer asked, Result result) {
    this.asked = asked;
    this.answer = asked.answer();
    this.result = result;
    this.outcome = answer.question().outcome();
    this.measure = Told.measure(outcome, answer.selection().rows());
    this.lines =
        Blocks.of(answer, result).stream()
            .flatMap(block -> block.lines().stream())
            .filter(line -> LengthPlan.length(line.row()).isPresent())
            .filter(line -> AnswerForest.shown(outcome, line).isPresent())
            .toList();
  }

  static Large<Bubble> of(LengthAnswer asked, Result result, Edition edition) {
    AnswerBubble figure = new AnswerBubble(asked, result);
    List<Blocks.Line> all = figure.lines;
    Bubble whole = figure.bubble(edition, all, Optional.empty());
    if (all.size() <= Large.MOST_DRAWN) {
      return new Large<>(whole);
    }
    String some =
        say("answer.drawn-by-patients", Map.of("drawn", Large.MOST_DRAWN, "series", all.size()));
    return new Large<>(
        figure.bubble(
            edition,
            Large.largest(all, Large.MOST_DRAWN, line -> line.row().speaksOf().orElse(0)),
            Optional.of(some)),
        whole,
        Optional.of(some));
  }

  /**
   * The figure with marks for some series; all else is of all.
   *
   * @param some says that they are not all
   */
  private Bubble bubble(Edition edition, List<Blocks.Line> drawn, Optional<String> some) {
    List<Bubble.At> curve = curve();
    List<String> sentences = new ArrayList<>(Blocks.headlines(answer.selection()));
    if (curve.isEmpty()) {
      // Why there is no line goes where the figure goes.
      sentences.addAll(asked.notes());
    } else {
      sentences.addAll(
          new LengthWords(
                  outcome, measure, curve, SynthesisResult.of(result).regression().orElseThrow())
              .sentences(asked.drawn().orElse(LengthShape.LINE)));
    }
    some.ifPresent(sentences::add);
    List<BubblePatient> patients =
        drawn.stream()
            .map(Blocks.Line::row)
            .flatMap(row -> LengthPatients.of(answer.selection(), row, kind(row)).stream())
            .toList();
    return new Bubble(
        LengthPlan.title(answer.question()),
        sentences,
        measure,
        AnswerForest.axis(outcome, measure),
        drawn.stream().map(this::point).toList(),
        curve,
        patients,
        cautions(!curve.isEmpty(), !patients.isEmpty()),
        provenance(edition));
  }

  private Bubble.Point point(Blocks.Line line) {
    SelectedRow row = line.row();
    Estimate estimate = AnswerForest.shown(outcome, line).orElseThrow();
    DefectLength length = row.defect().orElseThrow().length();
    return new Bubble.Point(
        PatientsMeant.named(row),
        kind(row),
        length.centreCentimetres().orElseThrow(),
        spread(length),
        spreadIs(length),
        estimate.value(),
        estimate.intervalKnown() ? Optional.of(estimate.limits()) : Optional.empty(),
        row.speaksOf().isPresent()
            ? OptionalDouble.of(row.speaksOf().getAsInt())
            : OptionalDouble.empty(),
        line.study().weightPercent(),
        row.study().citation().line());
  }

  private static MethodMark kind(SelectedRow row) {
    Method method = row.arm().method().principal();
    return new MethodMark(method.code(), method.shortLabel(), method.mark(), method.colour());
  }

  /** Only a closed stretch that is more than its middle. */
  private static Optional<Limits> spread(DefectLength length) {
    return length
        .reportedRange()
        .filter(range -> range.toCentimetres() > range.fromCentimetres())
        .filter(range -> !Double.isInfinite(range.toCentimetres()))
        .map((LengthRange range) -> new Limits(range.fromCentimetres(), range.toCentimetres()));
  }

  /** What {@link DefectLength#reportedRange()} took, in the same order. */
  private static String spreadIs(DefectLength length) {
    if (length.summary().isEmpty()) {
      return say("answer.spread-bands");
    }
    QuantitySummary summary = length.summary().get();
    if (summary.minimum().isPresent() && summary.maximum().isPresent()) {
      return say("answer.spread-range");
    }
    if (summary.lowerQuartile().isPresent() && summary.upperQuartile().isPresent()) {
      return say("answer.spread-quartiles");
    }
    boolean deviation = summary.mean().isPresent() && summary.standardDeviation().isPresent();
    return say(deviation ? "answer.spread-deviation" : "answer.spread-bands");
  }

  /** The points of all stretches, each length once. */
  private List<Bubble.At> curve() {
    Map<Double, Bubble.At> byLength = new TreeMap<>();
    SynthesisResult.of(result)
        .regression()
        .flatMap(RegressionResult::curves)
        .orElse(List.of())
        .forEach(
            curve ->
                curve
                    .points()
                    .forEach(
                        point -> {
                          Bubble.At at = at(point, (int) entered());
                          byLength.putIfAbsent(at.lengthCentimetres(), at);
                        }));
    return byLength.values().stream()
        .sorted(Comparator.comparingDouble(Bubble.At::lengthCentimetres))
        .toList();
  }

  private static Bubble.At at(RegressionResult.Prediction point, int groups) {
    Estimate average = PooledValue.average(point.shown());
    return new Bubble.At(
        Objects.requireNonNull(point.at().get(LengthPlan.COLUMN)).asDouble(),
        average.value(),
        average.limits(),
        PooledValue.newCentre(point.shown(), groups),
        point.outsideData());
  }

  private long entered() {
    return lines.stream().filter(line -> line.study().weightPercent().isPresent()).count();
  }

  private List<String> cautions(boolean line, boolean patients) {
    List<String> cautions = new ArrayList<>();
    if (line) {
      cautions.add(ECOLOGICAL);
      if (entered() < FEWEST_TO_TRUST) {
        cautions.add(say("answer.line-through-few", Map.of("fewest", FEWEST_TO_TRUST)));
      }
      if (methods() > 1) {
        cautions.add(SHARED_LINE);
      }
    }
    Blocks.withoutZeros(answer, result).ifPresent(cautions::add);
    Prices.of(outcome, answer.selection().rows()).map(Prices::sentence).ifPresent(cautions::add);
    if (patients) {
      cautions.add(LengthPatients.CAUTION);
    }
    if (methods() > 1) {
      cautions.add(AnswerForest.NO_COMPARISON);
    }
    cautions.addAll(AnswerForest.CAUTIONS);
    return cautions;
  }

  private long methods() {
    return lines.stream().map(line -> line.row().arm().method().principal()).distinct().count();
  }

  private FigureProvenance provenance(Edition edition) {
    List<SelectedRow> rows = lines.stream().map(Blocks.Line::row).toList();
    return new FigureProvenance(
            People.series(rows),
            People.of(rows),
            model(),
            edition.words(result.data().sha256()),
            edition.date(),
            rows.stream().anyMatch(row -> row.study().invented()))
        .citing(Cited.of(rows));
  }

  /** With a line the limits are those of its test; limits of an average have no bearing. */
  private String model() {
    ObjectNode plan = result.plan();
    if (asked.drawn().isEmpty()) {
      return say("answer.no-model");
    }
    plan.remove("interval");
    Map<String, String> model = Map.of("model", ModelWords.model(plan));
    boolean curve = asked.drawn().get() == LengthShape.CURVE;
    return switch (plan.path("moderatorTest").asText()) {
      case "normal" -> say(curve ? "answer.curve-normal" : "answer.line-normal", model);
      case "t-k-minus-p" -> say(curve ? "answer.curve-profile" : "answer.line-profile", model);
      default -> say(curve ? "answer.curve-knapp-hartung" : "answer.line-knapp-hartung", model);
    };
  }
}
