package gapwise.wording;

import static gapwise.sentence.Sentences.say;

import gapwise.effect.ArmCounts;
import gapwise.effect.ArmRate;
import gapwise.effect.Interval;
import gapwise.effect.ProportionInterval;
import gapwise.effect.RateInterval;
import gapwise.evidence.EventCount;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A reported value in words: first as counted or measured, then what follows from it.
 *
 * @param counted "27 of 31", "mean 8.3, SD 2.1 months"
 * @param share "87 in 100 (70 to 96)" with the exact interval of Clopper and Pearson (Biometrika
 *     1934;26:404) at 95 %, or "4.2 in 100 patient-months (1.1 to 10.7)" with the exact interval of
 *     Garwood (Biometrika 1936;28:437); empty where there is none
 */
public record Values(String counted, String share) {
  private static final double LEVEL = 0.95;
  private static final int PER = 100;

  /** The value of an outcome, times and lengths in the unit in which the outcome is compared. */
  public static Values of(Outcome outcome, ReportedValue value) {
    if (value instanceof ReportedValue.Events events) {
      return events(events.count());
    }
    if (value instanceof ReportedValue.Quantity quantity) {
      QuantitySummary summary = quantity.summary();
      return new Values(QuantityWords.in(summary, outcome.unit().orElse(summary.unit())), "");
    }
    return asReported(value);
  }

  /** The same as one number, for a line of a list: of a quantity its middle, then its spread. */
  public static Values inList(Outcome outcome, ReportedValue value) {
    if (value instanceof ReportedValue.Quantity quantity) {
      QuantitySummary summary = quantity.summary();
      Unit unit = outcome.unit().orElse(summary.unit());
      return new Values(
          QuantityWords.centre(summary, unit), QuantityWords.spread(summary, unit).orElse(""));
    }
    return of(outcome, value);
  }

  /** The value in the units that the paper prints. */
  public static Values asReported(ReportedValue value) {
    if (value instanceof ReportedValue.Events events) {
      return events(events.count());
    }
    if (value instanceof ReportedValue.Quantity quantity) {
      return new Values(QuantityWords.asReported(quantity.summary()), "");
    }
    if (value instanceof ReportedValue.Rate rate) {
      return rate(rate);
    }
    if (value instanceof ReportedValue.Effect effect) {
      return effect(effect);
    }
    if (value instanceof ReportedValue.Categories categories) {
      String counts =
          categories.counts().stream()
              .map(
                  category ->
                      say(
                          "wording.category",
                          Map.of("name", category.name(), "number", category.count())))
              .collect(Collectors.joining(", "));
      return new Values(counts, "");
    }
    if (value instanceof ReportedValue.Tally tally) {
      return new Values(tally(tally), "");
    }
    ReportedValue.Statement statement = (ReportedValue.Statement) value;
    return new Values(quoted(statement.words()), "");
  }

  /**
   * The rate for each 100 units of time, since small numbers are hard to read. A time next to 0,
   * over which limits are endless, leaves the count alone.
   */
  private static Values rate(ReportedValue.Rate rate) {
    String time = say("wording.patient-time", Map.of("unit", rate.unit().symbol()));
    String counted =
        say(
            "wording.rate",
            Map.of(
                "events", rate.events(),
                "amount", Shown.number(rate.personTime()),
                "time", time));
    Interval ofCount = RateInterval.EXACT_POISSON.of(new ArmRate(rate.events(), 1), LEVEL);
    double factor = PER / rate.personTime();
    if (!Double.isFinite(factor * ofCount.upper())) {
      return new Values(counted, "");
    }
    Estimate each =
        Estimate.of(factor * rate.events(), factor * ofCount.lower(), factor * ofCount.upper());
    return new Values(
        counted,
        say(
            "wording.rate-with-limits",
            Map.of(
                "value",
                Shown.value(Quantity.mean(time), each.value()),
                "per",
                PER,
                "time",
                time,
                "limits",
                Shown.limits(Quantity.mean(time), each.limits()))));
  }

  private static String tally(ReportedValue.Tally tally) {
    return tally.among().isPresent()
        ? say(
            "wording.events-among",
            Map.of("events", tally.events(), "patients", tally.among().getAsInt()))
        : say("wording.events-among-unstated", Map.of("events", tally.events()));
  }

  /** Words as a paper prints them, in quotation marks. */
  private static String quoted(String words) {
    return say("wording.quoted", Map.of("words", words));
  }

  private static Values effect(ReportedValue.Effect effect) {
    Map<String, Object> values = new HashMap<>();
    values.put("kind", effect.kind());
    values.put("value", Shown.number(effect.estimate()));
    boolean limits = effect.lower().isPresent() && effect.upper().isPresent();
    if (limits) {
      values.put("lower", Shown.number(effect.lower().getAsDouble()));
      values.put("upper", Shown.number(effect.upper().getAsDouble()));
    }
    boolean tested = effect.pValue().isPresent();
    if (tested) {
      values.put("p", String.valueOf(effect.pValue().getAsDouble()));
    }
    String words =
        limits
            ? say(
                tested ? "wording.effect-with-limits-and-p" : "wording.effect-with-limits", values)
            : say(tested ? "wording.effect-with-p" : "wording.effect", values);
    return new Values(
        words,
        effect
            .adjustedFor()
            .map(what -> say("wording.adjusted-for", Map.of("what", what)))
            .orElseGet(() -> say("wording.not-adjusted")));
  }

  private static Values events(EventCount count) {
    if (!count.isComplete()) {
      String percent =
          count.percentAsReported().isPresent()
              ? say(
                  "wording.percent",
                  Map.of("percent", Shown.number(count.percentAsReported().getAsDouble())))
              : "";
      return count.events().isPresent()
          ? new Values(
              say("wording.events-of-unstated", Map.of("events", count.events().getAsInt())),
              percent)
          : new Values(percent, "");
    }
    int events = count.events().getAsInt();
    int total = count.total().getAsInt();
    return new Values(ofTotal(events, total), exact(events, total, count.countedBack()));
  }

  /** Such as "27 of 31". */
  public static String ofTotal(int events, int total) {
    return say("wording.events-of", Map.of("events", events, "total", total));
  }

  private static String exact(int events, int total, boolean countedBack) {
    Interval interval = ProportionInterval.CLOPPER_PEARSON.of(new ArmCounts(events, total), LEVEL);
    Estimate estimate = Estimate.of(events / (double) total, interval.lower(), interval.upper());
    return say(
        countedBack ? "wording.share-counted-back" : "wording.share",
        Map.of(
            "value", Shown.value(Quantity.of100(), estimate.value()),
            "limits", Shown.limits(Quantity.of100(), estimate.limits())));
  }
}
