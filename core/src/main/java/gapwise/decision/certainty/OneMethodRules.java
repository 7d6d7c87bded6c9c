package gapwise.decision.certainty;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.situation.Fit;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Proposes the certainty of what is reported after one method: a prognosis, which starts high and
 * is lowered domain by domain (Iorio et al., BMJ 2015;350:h870; Foroutan et al., J Clin Epidemiol
 * 2020;121:62). The papers name the domains; each number at which one is proposed to lower is
 * common practice or our choice, said in docs/methods/certainty.md, and a person settles.
 */
public final class OneMethodRules {
  private static final double HALF = 0.5;
  private static final double THREE_QUARTERS = 0.75;
  private static final double QUARTER = 0.25;

  /** Half an interval of a share that is wide, and very wide, where no difference is named. */
  private static final double WIDE_SHARE = 0.10;

  /** The same for what has a unit, as a part of its average. */
  private static final double WIDE_PART = 0.25;

  /** Centres differ by so many times a wide interval before it lowers. */
  private static final double CENTRES = 2;

  /** Rates nearer to 0 or 1 are taken as so far from it. */
  private static final double LEAST_SHARE = 0.05;

  /** A series of fewer that only reports success may be one of several. */
  private static final int SMALL_SERIES = 20;

  private static final int FEWEST_FOR_INCONSISTENCY = 3;

  private OneMethodRules() {}

  /**
   * What is known of the number.
   *
   * @param measure what it is
   * @param value with its interval; empty where no average can be given
   * @param newCentre where the true value of a further centre may lie; empty where not told
   * @param matters the difference that would matter, in the unit of the number (a share 0 to 1);
   *     empty where nobody named one
   * @param series behind it, at least one
   * @param fit how they match the situation
   * @param surrogate whether the outcome stands for another that matters
   */
  public record Known(
      Quantity measure,
      Optional<Estimate> value,
      Optional<Limits> newCentre,
      OptionalDouble matters,
      List<SeriesSeen> series,
      Fit fit,
      boolean surrogate) {
    public Known {
      series = List.copyOf(series);
      if (series.isEmpty()) {
        throw new IllegalArgumentException("no certainty without a series");
      }
    }
  }

  /** The proposal. */
  public static Rating propose(Known known) {
    return new Rating(
        Start.ONE_METHOD,
        List.of(
            bias(known.series()),
            inconsistency(known),
            indirectness(known.fit(), known.surrogate()),
            imprecision(known),
            unpublished(known.series())),
        0);
  }

  /** More than half of the information from doubtful series lowers once, three quarters twice. */
  public static Lowering bias(List<SeriesSeen> series) {
    double critical = sum(series, SeriesSeen.Concern.CRITICAL);
    double serious = sum(series, SeriesSeen.Concern.SERIOUS) + critical;
    double unknown = sum(series, SeriesSeen.Concern.UNKNOWN);
    int levels = serious > THREE_QUARTERS || critical > HALF ? 2 : serious + unknown > HALF ? 1 : 0;
    return new Lowering(
        Domain.BIAS,
        levels,
        say("certainty.bias", Map.of("serious", percent(serious), "unknown", percent(unknown))));
  }

  private static double sum(List<SeriesSeen> series, SeriesSeen.Concern concern) {
    return series.stream()
        .filter(one -> one.concern() == concern)
        .mapToDouble(SeriesSeen::share)
        .sum();
  }

  /**
   * By the width of what a further centre may expect beyond that of the average, not by I squared,
   * which is large for nearly all rates (Migliavaca et al., Res Synth Methods 2022;13:363).
   */
  static Lowering inconsistency(Known known) {
    if (known.series().size() < FEWEST_FOR_INCONSISTENCY || known.newCentre().isEmpty()) {
      return new Lowering(Domain.INCONSISTENCY, 0, say("certainty.inconsistency-open"));
    }
    double wide = wide(known) * CENTRES;
    double half = half(known.newCentre().get());
    // One width lowers once: what the interval of the average has already is imprecision.
    double beyond = half - known.value().map(value -> half(value.limits())).orElse(0.0);
    int levels = beyond > 2 * wide ? 2 : beyond > wide ? 1 : 0;
    return new Lowering(
        Domain.INCONSISTENCY,
        levels,
        say(
            "certainty.inconsistency",
            Map.of(
                "limits",
                withUnit(
                    known.measure(), Shown.limits(known.measure(), known.newCentre().get())))));
  }

  /**
   * More than a quarter of the information outside or unknown lowers once, three quarters twice.
   */
  public static Lowering indirectness(Fit fit, boolean surrogate) {
    double away = fit.outside() + fit.unknown();
    int levels = away > THREE_QUARTERS || surrogate ? 2 : away > QUARTER ? 1 : 0;
    return new Lowering(
        Domain.INDIRECTNESS,
        levels,
        fit.equals(Fit.NONE)
            ? say("certainty.indirectness-not-asked")
            : say("certainty.indirectness", Map.of("fit", fit.words())));
  }

  /**
   * Half of the interval against what matters; without an average three levels. The interval of one
   * series leaves out how centres differ, so it lowers twice whatever its width (our choice). Fewer
   * patients than the optimal information size lower once where the interval is narrow by itself.
   */
  static Lowering imprecision(Known known) {
    if (known.value().isEmpty()) {
      return new Lowering(Domain.IMPRECISION, 3, say("certainty.imprecision-no-average"));
    }
    if (known.series().size() == 1) {
      return new Lowering(Domain.IMPRECISION, 2, say("certainty.imprecision-one-series"));
    }
    double half = half(known.value().get().limits());
    double wide = wide(known);
    int people = known.series().stream().mapToInt(SeriesSeen::people).sum();
    int levels = half > 2 * wide ? 2 : half > wide || people < informationSize(known) ? 1 : 0;
    return new Lowering(
        Domain.IMPRECISION,
        levels,
        say(
            "certainty.imprecision",
            Map.of(
                "limits",
                withUnit(
                    known.measure(), Shown.limits(known.measure(), known.value().get().limits())),
                "people",
                people)));
  }

  /** Small series that only report success, with more than half of the information. */
  static Lowering unpublished(List<SeriesSeen> series) {
    double share =
        series.stream()
            .filter(one -> one.allHad() && one.people() < SMALL_SERIES)
            .mapToDouble(SeriesSeen::share)
            .sum();
    return new Lowering(
        Domain.UNPUBLISHED,
        share > HALF ? 1 : 0,
        say("certainty.unpublished", Map.of("percent", percent(share), "fewer", SMALL_SERIES)));
  }

  /** What half of an interval may be, in the unit of the number. */
  private static double wide(Known known) {
    if (known.matters().isPresent()) {
      return known.matters().getAsDouble();
    }
    return known.measure().kind() == Quantity.Kind.OF_100
        ? WIDE_SHARE
        : known.value().map(value -> Math.abs(value.value()) * WIDE_PART).orElse(0.0);
  }

  /**
   * Patients until the interval is no wider than that: of a share by its own rate, kept from the
   * ends where the formula gives nobody; of what has a unit those of one group that tell half a
   * standard deviation apart.
   */
  private static long informationSize(Known known) {
    if (known.measure().kind() != Quantity.Kind.OF_100) {
      return InformationSize.ofMeans(HALF);
    }
    double share = known.value().orElseThrow().value();
    return InformationSize.ofOneShare(
        Math.min(1 - LEAST_SHARE, Math.max(LEAST_SHARE, share)), WIDE_SHARE);
  }

  private static double half(Limits limits) {
    return (limits.upper() - limits.lower()) / 2;
  }

  private static int percent(double share) {
    return (int) Math.round(share * 100);
  }

  private static String withUnit(Quantity measure, String number) {
    return measure.kind() == Quantity.Kind.OF_100
        ? say("certainty.of-hundred", Map.of("number", number))
        : measure.unit().isEmpty()
            ? number
            : say("certainty.in-unit", Map.of("number", number, "unit", measure.unit()));
  }
}
