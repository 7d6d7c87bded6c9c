package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import gapwise.selection.SelectedRow;
import java.math.BigDecimal;
import java.math.MathContext;
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
 * @param rest what follows the value in its sentence, or stands alone; without a full stop
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
                    List.of(from(block.rows()))));
  }

  private static Told pooled(Outcome outcome, Blocks.Block block, Result.Summary summary) {
    List<SelectedRow> rows = block.pooled();
    Quantity measure = measure(outcome);
    Result.Shown shown = summary.shown();
    Limits limits = new Limits(shown.lower(), shown.upper());
    return new Told(
        block.method().label(),
        Optional.of(value(measure, outcome, shown.estimate())),
        counted(outcome)
            + " "
            + say("told.on-average", Map.of("limits", Shown.limits(measure, limits))),
        Optional.of(words(rows)),
        filled(
            from(rows),
            withoutZeros(block),
            newCentre(measure, shown, rows.size()),
            spread(block.heterogeneity(), rows.size())));
  }

  private static Told alone(Outcome outcome, Blocks.Block block, Blocks.Line line) {
    Quantity measure = measure(outcome);
    Estimate one = line.estimate().orElseThrow();
    boolean only = block.lines().size() == 1;
    return new Told(
        block.method().label(),
        Optional.of(value(measure, outcome, one.value())),
        counted(outcome)
            + " "
            + say(
                only ? "told.only-series" : "told.only-usable-series",
                Map.of("limits", Shown.limits(measure, one.limits()))),
        Optional.of(words(List.of(line.row()))),
        filled(from(List.of(line.row())), withoutZeros(block), say("told.one-series")));
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
    return say("told.rows", Map.of("series", rows.size(), "people", people(rows)));
  }

  private static List<String> filled(String... sentences) {
    return Stream.of(sentences).filter(sentence -> !sentence.isEmpty()).toList();
  }

  private static Told atLimit(
      Outcome outcome, Method method, List<SelectedRow> rows, boolean everybody) {
    String became = counted(outcome).replaceFirst("^ (limbs|patients|implants|flaps) ", "");
    return new Told(
        method.label(),
        Optional.empty(),
        say(
            everybody ? "told.everybody" : "told.nobody",
            Map.of("people", people(rows), "became", became.strip(), "series", rows.size())),
        Optional.empty(),
        List.of(say("told.limit")));
  }

  private static String value(Quantity measure, Outcome outcome, double estimate) {
    String number = Shown.value(measure, estimate);
    if (measure.kind() == Quantity.Kind.OF_100) {
      return number + " of 100";
    }
    return number + (outcome.unit().isPresent() ? " " + measure.unit() : "");
  }

  private static String counted(Outcome outcome) {
    if (outcome.kind() == Outcome.Kind.CATEGORIES) {
      return " good or excellent";
    }
    return outcome.happened().map(words -> " " + words).orElse("");
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
    String unit = measure.kind() == Quantity.Kind.OF_100 ? " of 100" : " " + measure.unit();
    return say(
        "told.new-centre", Map.of("limits", Shown.limits(measure, limits) + unit.stripTrailing()));
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

  /** A message of the analysis as a sentence: capital first, full stop last. */
  static String asSentence(String message) {
    String end = message.endsWith(".") ? "" : ".";
    return Character.toUpperCase(message.charAt(0)) + message.substring(1) + end;
  }

  /** How many the rows speak of, "212 limbs", in the unit that they all count. */
  public static String people(List<SelectedRow> rows) {
    int sum = rows.stream().mapToInt(row -> row.speaksOf().orElse(0)).sum();
    List<CountedUnit> units =
        rows.stream()
            .map(row -> row.report().flatMap(r -> r.counted()).orElse(CountedUnit.PATIENTS))
            .distinct()
            .toList();
    return sum + " " + (units.size() == 1 ? units.get(0).label() : "patients or limbs");
  }

  /** The first sentence whole. */
  public String sentence() {
    return heading + ": " + value.orElse("") + rest + ".";
  }

  /** An estimate from what a result shows. */
  static Estimate estimate(Result.Shown shown) {
    return Estimate.of(shown.estimate(), shown.lower(), shown.upper());
  }
}
