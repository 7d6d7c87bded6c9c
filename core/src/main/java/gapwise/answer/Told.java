package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import gapwise.selection.SelectedRow;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A pooled value in sentences, in whole numbers of 100 or in the unit of the outcome, the average
 * first, then how sure it is, then what another centre may see.
 *
 * @param heading the method
 * @param value the pooled value, such as "90 of 100"; empty where there is none
 * @param rest what follows the value in its sentence, with the blank between them, or stands alone;
 *     without a full stop
 * @param rows the series and patients that the value is from; empty where there is no value
 * @param then further sentences
 */
public record Told(
    String heading, Optional<String> value, String rest, Optional<String> rows, List<String> then) {
  /** Below this p value of Cochran's Q, results are said to differ (common practice, no source). */
  private static final double DIFFERS_BELOW = 0.10;

  /** Fewer series than this give no range for another centre (common practice, no source). */
  private static final int FEWEST_FOR_NEW_CENTRE = 5;

  public Told {
    then = List.copyOf(then);
  }

  /** What the numbers of an outcome are. */
  public static Quantity measure(Outcome outcome) {
    return outcome.isEvent() || outcome.kind() == Outcome.Kind.CATEGORIES
        ? Quantity.of100()
        : Quantity.mean(outcome.unit().map(Unit::symbol).orElse(""));
  }

  static Told of(Outcome outcome, Blocks.Block block) {
    if (block.alone().isPresent()) {
      return alone(outcome, block, block.alone().get());
    }
    if (block.onlyLimit().isPresent()) {
      if (block.countsEvents()) {
        return withoutEvents(block);
      }
      boolean everybody = block.onlyLimit().getAsDouble() > 0;
      return atLimit(outcome, block.method(), block.rows(), everybody);
    }
    if (block.meansOfZero() == block.lines().size()) {
      return allZero(block);
    }
    return block
        .summary()
        .map(summary -> pooled(outcome, block, summary))
        .orElseGet(
            () ->
                new Told(
                    block.method().label(),
                    Optional.empty(),
                    say("told.no-average"),
                    Optional.empty(),
                    filled(from(block.rows()), allReport(outcome, block))));
  }

  private static Told pooled(Outcome outcome, Blocks.Block block, Result.Summary summary) {
    List<SelectedRow> rows = block.pooled();
    Quantity measure = measure(outcome);
    Result.Shown shown = summary.shown();
    Limits limits = new Limits(shown.lower(), shown.upper());
    return new Told(
        block.method().label(),
        Optional.of(value(measure, shown.estimate())),
        " " + onAverage(outcome, Shown.limits(measure, limits)),
        Optional.of(words(rows)),
        filled(
            from(rows),
            withoutZeros(block),
            allReport(outcome, block),
            newCentre(measure, shown, rows.size()),
            spread(block.heterogeneity(), rows.size())));
  }

  private static Told alone(Outcome outcome, Blocks.Block block, Blocks.Line line) {
    Quantity measure = measure(outcome);
    Estimate one = line.estimate().orElseThrow();
    boolean only = block.lines().size() == 1;
    return new Told(
        block.method().label(),
        Optional.of(value(measure, one.value())),
        " " + inOne(outcome, only, Shown.limits(measure, one.limits())),
        Optional.of(words(List.of(line.row()))),
        filled(
            from(List.of(line.row())),
            withoutZeros(block),
            allReport(outcome, block),
            say("told.one-series")));
  }

  /** What all series report, those too that no average can take; else an empty text. */
  private static String allReport(Outcome outcome, Blocks.Block block) {
    return CentresTold.of(outcome, block).orElse("");
  }

  /** Events of which one patient can have several, and none came. */
  private static Told withoutEvents(Blocks.Block block) {
    return new Told(
        block.method().label(),
        Optional.empty(),
        say(
            "told.without-events",
            Map.of("people", People.of(block.rows()), "series", block.lines().size())),
        Optional.empty(),
        List.of(say("told.limit")));
  }

  private static Told allZero(Blocks.Block block) {
    int series = block.lines().size();
    return new Told(
        block.method().label(),
        Optional.empty(),
        say("told.mean-of-zero", Map.of("series", series)),
        Optional.empty(),
        List.of(from(block.rows()), say("told.zero")));
  }

  /** What the value lacks where series with a mean of 0 are not in it; else an empty text. */
  private static String withoutZeros(Blocks.Block block) {
    return block.meansOfZero() == 0
        ? ""
        : say("told.without-zeros", Map.of("series", block.meansOfZero()));
  }

  private static String from(List<SelectedRow> rows) {
    return say("told.from", Map.of("rows", words(rows)));
  }

  private static String words(List<SelectedRow> rows) {
    return say("told.rows", Map.of("series", rows.size(), "people", People.of(rows)));
  }

  private static List<String> filled(String... sentences) {
    return Stream.of(sentences).filter(sentence -> !sentence.isEmpty()).toList();
  }

  /** Everybody or nobody: the number is of what the outcome counts, whatever the series count. */
  private static Told atLimit(
      Outcome outcome, Method method, List<SelectedRow> rows, boolean everybody) {
    List<String> then = new ArrayList<>();
    if (outcome.event().isPresent() && !People.unit(rows).equals(outcome.event().get().counted())) {
      then.add(from(rows));
    }
    then.add(say("told.limit"));
    return new Told(
        method.label(),
        Optional.empty(),
        outcome
            .event()
            .map(event -> atLimit(event, People.number(rows), rows.size(), everybody))
            .orElseGet(
                () ->
                    say(
                        everybody ? "told.everybody-good" : "told.nobody-good",
                        Map.of("people", People.of(rows), "series", rows.size()))),
        Optional.empty(),
        then);
  }

  /**
   * Everybody or nobody.
   *
   * @param number how many are counted
   */
  static String atLimit(Outcome.Event event, int number, int series, boolean everybody) {
    return say(
        everybody ? "told.everybody" : "told.nobody",
        Map.of(
            "number",
            number,
            "counted",
            event.counted(),
            "became",
            event.became(),
            "series",
            series));
  }

  private static String onAverage(Outcome outcome, String limits) {
    return what(outcome)
        .map(what -> say("told.such-on-average", Map.of("what", what, "limits", limits)))
        .orElseGet(() -> say("told.on-average", Map.of("limits", limits)));
  }

  private static String inOne(Outcome outcome, boolean only, String limits) {
    return what(outcome)
        .map(
            what ->
                say(
                    only ? "told.such-only-series" : "told.such-only-usable-series",
                    Map.of("what", what, "limits", limits)))
        .orElseGet(
            () ->
                say(
                    only ? "told.only-series" : "told.only-usable-series",
                    Map.of("limits", limits)));
  }

  private static String value(Quantity measure, double estimate) {
    return withUnit(measure, Shown.value(measure, estimate));
  }

  /** A number, or limits, with what they are of: "90 of 100", "8.3 months". */
  static String withUnit(Quantity measure, String number) {
    if (measure.kind() == Quantity.Kind.OF_100) {
      return say("told.of-hundred", Map.of("number", number));
    }
    return measure.unit().isEmpty()
        ? number
        : say("told.in-unit", Map.of("number", number, "unit", measure.unit()));
  }

  /** What is counted of 100; empty for what is measured. */
  private static Optional<String> what(Outcome outcome) {
    return outcome.kind() == Outcome.Kind.CATEGORIES
        ? Optional.of(say("told.good"))
        : outcome.happened();
  }

  /** Whether there are series enough to say where a new centre may lie. */
  static boolean tellsNewCentre(int series) {
    return series >= FEWEST_FOR_NEW_CENTRE;
  }

  private static String newCentre(Quantity measure, Result.Shown shown, int series) {
    if (!tellsNewCentre(series)
        || shown.predictionLower().isEmpty()
        || shown.predictionUpper().isEmpty()) {
      return say("told.no-new-centre");
    }
    Limits limits =
        new Limits(shown.predictionLower().getAsDouble(), shown.predictionUpper().getAsDouble());
    return say(
        "told.new-centre", Map.of("limits", withUnit(measure, Shown.limits(measure, limits))));
  }

  private static String spread(Result.Heterogeneity heterogeneity, int series) {
    if (!tellsNewCentre(series) || heterogeneity.tauSquared().isEmpty()) {
      return "";
    }
    if (heterogeneity.pValue().isEmpty()) {
      return say(
          heterogeneity.tauSquared().getAsDouble() == 0
              ? "told.spread-best-none"
              : "told.spread-best-some");
    }
    if (heterogeneity.pValue().getAsDouble() < DIFFERS_BELOW) {
      return say("told.spread-some");
    }
    return say(heterogeneity.tauSquared().orElse(0) == 0 ? "told.spread-none" : "told.spread-open");
  }

  /** A number with three digits that tell. */
  static String number(double value) {
    return BigDecimal.valueOf(value).round(new MathContext(3)).stripTrailingZeros().toPlainString();
  }

  /** The first sentence whole. */
  public String sentence() {
    return say(
        "told.headline", Map.of("heading", heading, "value", value.orElse(""), "rest", rest));
  }

  /** An estimate from what a result shows. */
  static Estimate estimate(Result.Shown shown) {
    return Estimate.of(shown.estimate(), shown.lower(), shown.upper());
  }
}
