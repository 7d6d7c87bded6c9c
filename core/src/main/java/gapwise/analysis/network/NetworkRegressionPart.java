package gapwise.analysis.network;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.effect.BackTransform;
import gapwise.numeric.ReferenceDistribution;
import gapwise.synthesis.network.Comparison;
import gapwise.synthesis.network.NetworkRegression;
import gapwise.synthesis.network.NetworkStudy;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** The network again with a slope along its moderator. */
final class NetworkRegressionPart {
  private final NetworkPlan plan;
  private final NetworkModerator moderator;
  private final BackTransform back;
  private final List<NetworkStudy> studies = new ArrayList<>();
  private final List<Double> values = new ArrayList<>();

  private NetworkRegressionPart(NetworkPlan plan, NetworkModerator moderator, BackTransform back) {
    this.plan = plan;
    this.moderator = moderator;
    this.back = back;
  }

  /**
   * The regression; empty where it cannot be told, which a warning then says.
   *
   * @param numbers of studies
   * @param reference the treatment that others are set against
   * @param warnings takes what a reader must know
   */
  static Optional<NetworkRegressionResult> of(
      NetworkPlan plan,
      NetworkModerator moderator,
      NetworkData data,
      ModeratorOfStudies numbers,
      String reference,
      List<Result.Warning> warnings) {
    NetworkRegressionPart part = new NetworkRegressionPart(plan, moderator, data.shown());
    part.enter(data, numbers, warnings);
    NetworkRegression.Fitted fitted =
        NetworkRegression.of(part.studies, part.values, reference, plan.settings());
    if (fitted instanceof NetworkRegression.Fitted.Not not) {
      warnings.add(Result.Warning.of(not.why()));
      return Optional.empty();
    }
    warnings.add(
        Result.Warning.of(
            "ecological-bias",
            say("analysis.network-along-averages", Map.of("reference", reference))));
    return Optional.of(part.told(((NetworkRegression.Fitted.Done) fitted).regression(), reference));
  }

  private void enter(NetworkData data, ModeratorOfStudies numbers, List<Result.Warning> warnings) {
    for (NetworkStudy study : data.studies()) {
      Double value = numbers.byStudy().get(study.label());
      if (value == null) {
        warnings.add(
            Result.Warning.of(
                "missing-value",
                say(
                    "analysis.study-not-in-network-regression",
                    Map.of("study", study.label(), "column", moderator.column())),
                study.label()));
      } else {
        studies.add(study);
        values.add(value);
      }
    }
  }

  private NetworkRegressionResult told(NetworkRegression regression, String reference) {
    ReferenceDistribution distribution =
        moderator.studentT()
            ? regression.studentT().orElse(ReferenceDistribution.normal())
            : ReferenceDistribution.normal();
    Comparison slope = regression.slope();
    double half = distribution.multiplier(plan.settings().level()) * slope.standardError();
    double statistic = slope.estimate() / slope.standardError();
    OptionalInt degrees = distribution.wholeDegreesOfFreedom();
    return new NetworkRegressionResult(
        moderator.column(),
        reference,
        studies.size(),
        regression.studiesWithReference(),
        new NetworkRegressionResult.Slope(
            slope.estimate(),
            slope.standardError(),
            statistic,
            degrees,
            distribution.twoSidedP(statistic),
            slope.estimate() - half,
            slope.estimate() + half),
        NetworkReport.heterogeneity(regression.heterogeneity()),
        Stream.concat(
                Stream.of(moderator.centre().orElse(regression.mean())),
                moderator.values().stream())
            .map(value -> prediction(regression, reference, value, distribution))
            .toList());
  }

  private NetworkRegressionResult.Prediction prediction(
      NetworkRegression regression,
      String reference,
      double value,
      ReferenceDistribution distribution) {
    double multiplier = distribution.multiplier(plan.settings().level());
    return new NetworkRegressionResult.Prediction(
        Map.of(moderator.column(), value),
        value < Collections.min(values) || value > Collections.max(values),
        regression.treatments().stream()
            .map(
                treatment -> {
                  Comparison effect = regression.effect(treatment, value);
                  double half = multiplier * effect.standardError();
                  double lower = effect.estimate() - half;
                  double upper = effect.estimate() + half;
                  return new NetworkRegressionResult.Effect(
                      treatment,
                      reference,
                      effect.estimate(),
                      effect.standardError(),
                      lower,
                      upper,
                      new Result.Estimate(
                          back.apply(effect.estimate()), back.apply(lower), back.apply(upper)));
                })
            .toList());
  }
}
