package gapwise.answer;

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
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A pooled value in sentences, in whole numbers of 100 or in the unit of the outcome, the average
 * first, then how sure it is, then what another centre may see.
 *
 * @param heading the method
 * @param value the pooled value, such as "90 of 100"; empty where there is none
 * @param rest what follows the value in its sentence
 * @param then further sentences
 */
public record Told(String heading, Optional<String> value, String rest, List<String> then) {
  /** Below this p value of Cochran's Q, results are said to differ (common practice, no source). */
  private static final double DIFFERS_BELOW = 0.10;

  /** Fewer series than this give no range for another centre (common practice, no source). */
  private static final int FEWEST_FOR_NEW_CENTRE = 5;

  private static final String NO_AVERAGE =
      "With nothing else seen, no average between centres can be given; read the exact interval of"
          + " each series. It does not mean that it cannot come otherwise.";

  private static final String NO_MEAN =
      "With nothing else seen, no average between centres can be given. It does not mean that it"
          + " cannot come otherwise.";

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
                    "no average can be given; see the series one by one.",
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
        counted(outcome) + " on average (95 % interval " + Shown.limits(measure, limits) + ")",
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
            + (only ? " in the one series there is" : " in the one series with all numbers needed")
            + " (95 % interval "
            + Shown.limits(measure, one.limits())
            + ")",
        filled(
            from(List.of(line.row())),
            withoutZeros(block),
            "One series says nothing of how results differ between centres."));
  }

  private static Told allZero(Blocks.Block block) {
    int series = block.lines().size();
    return new Told(
        block.method().label(),
        Optional.empty(),
        (series == 1 ? "a mean of 0 in the one series there is" : "a mean of 0 in every series")
            + ".",
        List.of(from(block.rows()), NO_MEAN));
  }

  /** What the value lacks where series with a mean of 0 are not in it; else an empty text. */
  private static String withoutZeros(Blocks.Block block) {
    return switch (block.meansOfZero()) {
      case 0 -> "";
      case 1 ->
          "1 further series reports a mean of 0, which has no place on this scale: with it"
              + " the value would be lower.";
      default ->
          block.meansOfZero()
              + " further series report a mean of 0, which has no place on this scale: with them the"
              + " value would be lower.";
    };
  }

  private static String from(List<SelectedRow> rows) {
    return "From " + rows.size() + " series with " + people(rows) + ".";
  }

  private static List<String> filled(String... sentences) {
    return Stream.of(sentences).filter(sentence -> !sentence.isEmpty()).toList();
  }

  private static Told atLimit(
      Outcome outcome, Method method, List<SelectedRow> rows, boolean everybody) {
    String became = counted(outcome).replaceFirst("^ (limbs|patients|implants|flaps) ", " ");
    return new Told(
        method.label(),
        Optional.empty(),
        (everybody ? "all " : "none of ")
            + people(rows)
            + became
            + ", in "
            + rows.size()
            + " series.",
        List.of(NO_AVERAGE));
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
      return "With so few series it cannot be told what another centre may expect.";
    }
    Limits limits =
        new Limits(shown.predictionLower().getAsDouble(), shown.predictionUpper().getAsDouble());
    String unit = measure.kind() == Quantity.Kind.OF_100 ? " of 100" : " " + measure.unit();
    return "A new centre could expect "
        + Shown.limits(measure, limits)
        + unit.stripTrailing()
        + ".";
  }

  private static String spread(Result.Heterogeneity heterogeneity, int series) {
    if (!tellsNewCentre(series) || heterogeneity.tauSquared().isEmpty()) {
      return "";
    }
    if (heterogeneity.pValue().isEmpty()) {
      return heterogeneity.tauSquared().getAsDouble() == 0
          ? "By the best estimate, results of the series differ no more than chance explains."
          : "By the best estimate, results of the series differ more than chance explains.";
    }
    if (heterogeneity.pValue().getAsDouble() < DIFFERS_BELOW) {
      return "Results of the series differ more than chance explains.";
    }
    return heterogeneity.tauSquared().orElse(0) == 0
        ? "Results of the series differ no more than chance explains."
        : "Results of the series differ; chance alone may explain it.";
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
    return heading + ": " + value.orElse("") + rest + (rest.endsWith(".") ? "" : ".");
  }

  /** An estimate from what a result shows. */
  static Estimate estimate(Result.Shown shown) {
    return Estimate.of(shown.estimate(), shown.lower(), shown.upper());
  }
}
