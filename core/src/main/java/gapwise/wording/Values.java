package gapwise.wording;

import gapwise.effect.ArmCounts;
import gapwise.effect.ArmRate;
import gapwise.effect.Interval;
import gapwise.effect.ProportionInterval;
import gapwise.effect.RateInterval;
import gapwise.evidence.EventCount;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
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
              .map(category -> category.name() + " " + category.count())
              .collect(Collectors.joining(", "));
      return new Values(counts, "");
    }
    if (value instanceof ReportedValue.Tally tally) {
      String among =
          tally.among().isPresent() ? tally.among().getAsInt() + " patients" : "an unstated number";
      return new Values(tally.events() + " events among " + among, "");
    }
    ReportedValue.Statement statement = (ReportedValue.Statement) value;
    return new Values("“" + statement.words() + "”", "");
  }

  /**
   * The rate for each 100 units of time, since small numbers are hard to read. A time next to 0,
   * over which limits are endless, leaves the count alone.
   */
  private static Values rate(ReportedValue.Rate rate) {
    String time = "patient-" + rate.unit().symbol();
    String counted = rate.events() + " in " + Shown.number(rate.personTime()) + " " + time;
    Interval ofCount = RateInterval.EXACT_POISSON.of(new ArmRate(rate.events(), 1), LEVEL);
    double factor = PER / rate.personTime();
    if (!Double.isFinite(factor * ofCount.upper())) {
      return new Values(counted, "");
    }
    Estimate each =
        Estimate.of(factor * rate.events(), factor * ofCount.lower(), factor * ofCount.upper());
    return new Values(counted, of(Quantity.mean(time), each, PER + " " + time));
  }

  private static Values effect(ReportedValue.Effect effect) {
    StringBuilder words =
        new StringBuilder(effect.kind()).append(' ').append(Shown.number(effect.estimate()));
    if (effect.lower().isPresent() && effect.upper().isPresent()) {
      words
          .append(" (")
          .append(Shown.number(effect.lower().getAsDouble()))
          .append(" to ")
          .append(Shown.number(effect.upper().getAsDouble()))
          .append(')');
    }
    if (effect.pValue().isPresent()) {
      words.append(", p ").append(effect.pValue().getAsDouble());
    }
    return new Values(
        words.toString(),
        effect.adjustedFor().map(a -> "adjusted for " + a).orElse("not adjusted"));
  }

  private static Values events(EventCount count) {
    if (!count.isComplete()) {
      String events =
          count.events().isPresent() ? count.events().getAsInt() + " of an unstated number" : "";
      String percent =
          count.percentAsReported().isPresent()
              ? Shown.number(count.percentAsReported().getAsDouble()) + " %, without counts"
              : "";
      return new Values(events.isEmpty() ? percent : events, events.isEmpty() ? "" : percent);
    }
    int events = count.events().getAsInt();
    int total = count.total().getAsInt();
    String back = count.countedBack() ? ", counted back from a percentage" : "";
    return new Values(events + " of " + total, exact(events, total) + back);
  }

  private static String exact(int events, int total) {
    Interval interval = ProportionInterval.CLOPPER_PEARSON.of(new ArmCounts(events, total), LEVEL);
    Estimate estimate = Estimate.of(events / (double) total, interval.lower(), interval.upper());
    return of(Quantity.of100(), estimate, "100");
  }

  /** An estimate of so many: "9 in 100 (3 to 18)". */
  private static String of(Quantity quantity, Estimate estimate, String many) {
    return Shown.value(quantity, estimate.value())
        + " in "
        + many
        + " ("
        + Shown.limits(quantity, estimate.limits())
        + ")";
  }
}
