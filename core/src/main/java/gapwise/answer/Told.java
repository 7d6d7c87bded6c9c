package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import gapwise.selection.Prices;
import gapwise.selection.SelectedRow;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A pooled value in sentences: of shares the plain count first; then the average over centres, in
 * whole numbers of 100 or in the unit of the outcome, with how sure it is; then what another centre
 * may see.
 *
 * @param heading the method, or the word of a detail
 * @param lead what stands before the value in its sentence, with the blank between them; may be
 *     empty
 * @param value the pooled value, such as "90 of 100"; empty where there is none
 * @param rest what follows the value in its sentence, with the blank between them, or stands alone;
 *     without a full stop
 * @param rows the series and patients that the value is from; empty where there is no value
 * @param then further sentences
 */
public record Told(
    String heading,
    String lead,
    Optional<String> value,
    String rest,
    Optional<String> rows,
    List<String> then) {
  public Told {
    then = List.copyOf(then);
  }

  /** What the numbers of an outcome are; costs in the currency of these rows. */
  public static Quantity measure(Outcome outcome, List<SelectedRow> rows) {
    return outcome.isEvent() || outcome.kind() == Outcome.Kind.CATEGORIES
        ? Quantity.of100()
        : Quantity.mean(
            Prices.of(outcome, rows)
                .map(Prices::unit)
                .orElseGet(() -> outcome.unit().map(Unit::symbol).orElse("")));
  }

  static Told of(Outcome outcome, Blocks.Block block) {
    if (block.alone().isPresent()) {
      return alone(outcome, block, block.alone().get());
    }
    if (block.onlyLimit().isPresent()) {
      boolean everybody = block.onlyLimit().getAsDouble() > 0;
      return atLimit(outcome, block.of(), block.rows(), everybody);
    }
    if (block.meansOfZero() == block.lines().size()) {
      return allZero(block);
    }
    if (block.open().isPresent()) {
      return open(outcome, block, block.open().get());
    }
    return block
        .summary()
        .map(summary -> pooled(outcome, block, summary))
        .orElseGet(
            () ->
                new Told(
                    block.of().label(),
                    "",
                    Optional.empty(),
                    say("told.no-average"),
                    Optional.empty(),
                    filled(from(block.rows()), allReport(outcome, block))));
  }

  private static Told pooled(Outcome outcome, Blocks.Block block, Result.Summary summary) {
    List<SelectedRow> rows = block.pooled();
    Quantity measure = measure(outcome, rows);
    Estimate average = PooledValue.average(summary.shown());
    String limits = Shown.limits(measure, average.limits());
    Optional<String> count = PlainCount.inSeries(outcome, rows);
    boolean ofOneStudy = People.series(rows).ofOneStudy();
    return new Told(
        block.of().label(),
        count
            .map(
                counted ->
                    say(
                        ofOneStudy ? "told.lead-average-of-one-study" : "told.lead-average",
                        Map.of("count", counted)))
            .orElse(""),
        Optional.of(value(measure, average.value())),
        say(rest(count.isPresent(), ofOneStudy), Map.of("limits", limits)),
        Optional.of(words(rows)),
        filled(
            count.isPresent() && !isCountedOtherwise(outcome, rows) ? "" : from(rows),
            withoutZeros(block),
            allReport(outcome, block),
            belowZero(measure, average),
            PlainCount.isAtLimit(rows) ? say("told.nothing-else-seen") : "",
            CentresTold.assumed(measure, block),
            CentresTold.newCentre(measure, block),
            CentresTold.spread(block)));
  }

  /** Groups of one study are of one centre, or of those of one study. */
  private static String rest(boolean counted, boolean ofOneStudy) {
    if (counted) {
      return "told.rest-interval";
    }
    return ofOneStudy ? "told.rest-average-of-one-study" : "told.rest-average";
  }

  private static Told alone(Outcome outcome, Blocks.Block block, Blocks.Line line) {
    Estimate one = line.estimate().orElseThrow();
    List<SelectedRow> rows = List.of(line.row());
    Quantity measure = measure(outcome, rows);
    boolean only = block.lines().size() == 1;
    String limits = Shown.limits(measure, one.limits());
    Optional<String> count = PlainCount.of(outcome, rows);
    return new Told(
        block.of().label(),
        count
            .map(
                counted ->
                    say(
                        only ? "told.lead-only-series" : "told.lead-only-usable-series",
                        Map.of("count", counted)))
            .orElse(""),
        Optional.of(value(measure, one.value())),
        say(
            count.isPresent()
                ? "told.rest-interval"
                : only ? "told.rest-only-series" : "told.rest-only-usable-series",
            Map.of("limits", limits)),
        Optional.of(words(rows)),
        filled(
            count.isPresent() ? "" : from(rows),
            withoutZeros(block),
            allReport(outcome, block),
            CentresTold.ofOneSeries(measure, block)));
  }

  /** Said of an average whose interval reaches where it cannot lie; else an empty text. */
  private static String belowZero(Quantity measure, Estimate average) {
    return measure.kind() != Quantity.Kind.OF_100
            && average.limits().lower() < 0
            && average.value() > 0
        ? say("told.interval-below-zero")
        : "";
  }

  /** The counts, and how open the average is. */
  private static Told open(Outcome outcome, Blocks.Block block, Estimate average) {
    List<SelectedRow> rows = block.pooled();
    Quantity measure = measure(outcome, rows);
    Map<String, String> values = Map.of("limits", Shown.limits(measure, average.limits()));
    return PlainCount.inSeries(outcome, rows)
        .map(
            count ->
                new Told(
                    block.of().label(),
                    "",
                    Optional.empty(),
                    say(
                        "told.counted-average-open",
                        Map.of("count", count, "limits", values.get("limits"))),
                    Optional.of(words(rows)),
                    filled(withoutZeros(block), allReport(outcome, block))))
        .orElseGet(
            () ->
                new Told(
                    block.of().label(),
                    "",
                    Optional.empty(),
                    say("told.average-open", values),
                    Optional.of(words(rows)),
                    filled(from(rows), withoutZeros(block), allReport(outcome, block))));
  }

  /** What all series report, those too that no average can take; else an empty text. */
  private static String allReport(Outcome outcome, Blocks.Block block) {
    return CentresTold.of(outcome, block).orElse("");
  }

  private static Told allZero(Blocks.Block block) {
    int series = block.lines().size();
    return new Told(
        block.of().label(),
        "",
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
    String series = People.series(rows).words();
    int silent = (int) rows.stream().filter(row -> row.speaksOf().isEmpty()).count();
    if (silent == rows.size()) {
      return say("told.rows-silent", Map.of("series", series, "silent", silent));
    }
    return silent == 0
        ? say("told.rows", Map.of("series", series, "people", People.of(rows)))
        : say(
            "told.rows-some-silent",
            Map.of("series", series, "people", People.of(rows), "silent", silent));
  }

  private static List<String> filled(String... sentences) {
    return Stream.of(sentences).filter(sentence -> !sentence.isEmpty()).toList();
  }

  /**
   * Whether all or none are told of what the outcome counts, and the series count another thing.
   */
  private static boolean isCountedOtherwise(Outcome outcome, List<SelectedRow> rows) {
    return PlainCount.isAtLimit(rows)
        && outcome.event().filter(one -> !People.unit(rows).equals(one.counted())).isPresent();
  }

  /** Everybody or nobody, by a model that gives no average then. */
  private static Told atLimit(
      Outcome outcome, GroupName of, List<SelectedRow> rows, boolean everybody) {
    List<String> then = new ArrayList<>();
    if (isCountedOtherwise(outcome, rows)) {
      then.add(from(rows));
    }
    then.add(say("told.limit"));
    return new Told(
        of.label(),
        "",
        Optional.empty(),
        PlainCount.atLimit(outcome, rows, everybody),
        Optional.empty(),
        then);
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

  /** Such as "82 (52 to 93)", without what it is of. */
  public static String withLimits(Quantity measure, Estimate average) {
    return say(
        "told.value-with-limits",
        Map.of(
            "value", Shown.value(measure, average.value()),
            "limits", Shown.limits(measure, average.limits())));
  }

  /** A number with three digits that tell. */
  static String number(double value) {
    return BigDecimal.valueOf(value).round(new MathContext(3)).stripTrailingZeros().toPlainString();
  }

  /** The first sentence whole. */
  public String sentence() {
    return say(
        "told.headline",
        Map.of("heading", heading, "lead", lead, "value", value.orElse(""), "rest", rest));
  }
}
