package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.bayesian.BayesianResult;
import gapwise.analysis.result.Result;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import gapwise.selection.CentresReported;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How centres differ, in sentences: what all series of one method report as means and medians,
 * those without a spread too, which no average can take; where a new centre may lie; whether
 * results differ by more than chance.
 */
final class CentresTold {
  /** Below this p value of Cochran's Q, results are said to differ (common practice, no source). */
  private static final double DIFFERS_BELOW = 0.10;

  /** Fewer series have no middle half worth a sentence (our choice). */
  private static final int FEWEST_FOR_MIDDLE_HALF = 4;

  /** As many series tell more of how centres differ than is assumed of it (our choice). */
  private static final int FEWEST_WITHOUT_ASSUMPTION = 5;

  private CentresTold() {}

  /**
   * Such as "59 series report means from 4.1 to 19.6 months, half of them between 7.0 and 12.0;
   * weighted by patients 9.3. 23 of them are not in the average."; empty where fewer than two
   * series give a mean or median.
   */
  static Optional<String> of(Outcome outcome, Blocks.Block block) {
    return CentresReported.of(outcome, block.rows())
        .filter(reported -> reported.series() > 1)
        .map(
            reported ->
                told(Told.measure(outcome, block.rows()), reported) + notPooled(outcome, block));
  }

  private static String told(Quantity measure, CentresReported reported) {
    String extremes = extremes(measure, reported.centres());
    String least = Shown.value(measure, reported.centres().minimum().orElseThrow());
    return least.equals(Shown.value(measure, reported.centres().maximum().orElseThrow()))
        ? say(
            "told.all-report-alike",
            Map.of("what", what(reported), "value", Told.withUnit(measure, least)))
        : say(
            "told.all-report",
            Map.of(
                "what",
                what(reported),
                "values",
                Told.withUnit(measure, extremes),
                "half",
                half(measure, reported),
                "weighted",
                weighted(measure, reported)));
  }

  private static String what(CentresReported reported) {
    if (reported.medians() == 0) {
      return say("told.report-means", Map.of("series", reported.series()));
    }
    return reported.means() == 0
        ? say("told.report-medians", Map.of("series", reported.series()))
        : say(
            "told.report-means-and-medians",
            Map.of("means", reported.means(), "medians", reported.medians()));
  }

  private static String extremes(Quantity measure, QuantitySummary centres) {
    return Shown.limits(
        measure, new Limits(centres.minimum().orElseThrow(), centres.maximum().orElseThrow()));
  }

  private static String half(Quantity measure, CentresReported reported) {
    return reported.series() < FEWEST_FOR_MIDDLE_HALF
        ? ""
        : say(
            "told.half-between",
            Map.of(
                "from",
                Shown.value(measure, reported.centres().lowerQuartile().orElseThrow()),
                "to",
                Shown.value(measure, reported.centres().upperQuartile().orElseThrow())));
  }

  private static String weighted(Quantity measure, CentresReported reported) {
    return reported.weighted().isEmpty()
        ? ""
        : say(
            "told.weighted-by-patients",
            Map.of("value", Shown.value(measure, reported.weighted().getAsDouble())));
  }

  /** How many of them the value of the method is not from; empty where it has none. */
  private static String notPooled(Outcome outcome, Blocks.Block block) {
    long outside =
        block.lines().stream()
            .filter(line -> CentresReported.centre(outcome, line.row()).isPresent())
            .filter(line -> line.study().weightPercent().isEmpty())
            .count();
    int inside = block.pooled().size();
    if (outside == 0 || inside == 0) {
      return "";
    }
    return " "
        + say(inside == 1 ? "told.not-in-value" : "told.not-in-average", Map.of("series", outside));
  }

  /** Where the true value of a new centre may lie, or that it cannot be told. */
  static String newCentre(Quantity measure, Blocks.Block block) {
    return block
        .newCentre()
        .map(
            limits ->
                say(
                    "told.new-centre",
                    Map.of("limits", Told.withUnit(measure, Shown.limits(measure, limits)))))
        .orElseGet(() -> say("told.no-new-centre"));
  }

  /** Whether results differ by more than chance; empty where too few series could tell. */
  static String spread(Blocks.Block block) {
    Result.Heterogeneity heterogeneity = block.heterogeneity();
    int series = block.pooled().size();
    if (series < PooledValue.FEWEST_FOR_NEW_CENTRE || PlainCount.isAtLimit(block.pooled())) {
      return "";
    }
    if (heterogeneity.pValue().isPresent()) {
      boolean none = heterogeneity.tauSquared().orElse(1) == 0;
      boolean differ = heterogeneity.pValue().getAsDouble() < DIFFERS_BELOW;
      return say(differ ? "told.spread-some" : none ? "told.spread-none" : "told.spread-open");
    }
    if (heterogeneity.tauSquared().isEmpty()) {
      return "";
    }
    if (heterogeneity.tauSquaredLower().isPresent()) {
      return say(PooledValue.differ(heterogeneity) ? "told.spread-some" : "told.spread-open");
    }
    return say(
        heterogeneity.tauSquared().getAsDouble() == 0
            ? "told.spread-best-none"
            : "told.spread-best-some");
  }

  /**
   * How the average moves with what is assumed of how far centres differ, half of it or twice,
   * where few series, or series that are all alike, leave much to that; else an empty text.
   */
  static String assumed(Quantity measure, Blocks.Block block) {
    if (block.pooled().size() >= FEWEST_WITHOUT_ASSUMPTION
        && !PlainCount.isAtLimit(block.pooled())) {
      return "";
    }
    List<Estimate> others =
        block.posterior().flatMap(BayesianResult::priorSensitivity).orElse(List.of()).stream()
            .flatMap(other -> other.average().or(other::shown).stream())
            .map(shown -> Estimate.of(shown.median(), shown.lower(), shown.upper()))
            .toList();
    return others.size() != 2
        ? ""
        : say(
            "told.assumed",
            Map.of(
                "half", Told.withLimits(measure, others.get(0)),
                "twice", Told.withLimits(measure, others.get(1))));
  }

  /** What one series leaves open: how centres differ, and so where their average lies. */
  static String ofOneSeries(Quantity measure, Blocks.Block block) {
    return block
        .posterior()
        .flatMap(posterior -> posterior.average().or(() -> posterior.mean().shown()))
        .map(
            average ->
                say(
                    "told.one-series-average",
                    Map.of(
                        "limits",
                        Told.withUnit(
                            measure,
                            Shown.limits(measure, new Limits(average.lower(), average.upper()))))))
        .orElseGet(() -> say("told.one-series"));
  }
}
