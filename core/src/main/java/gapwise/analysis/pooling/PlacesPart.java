package gapwise.analysis.pooling;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.effect.BackTransform;
import gapwise.effect.StudyData;
import gapwise.problem.Problems;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Predictive;
import gapwise.synthesis.pooling.WeightedMean;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * The field {@code places}: where values stand among the studies pooled and in the distribution of
 * the true result of a further one.
 *
 * @param values as people read them; none if no place is asked for
 */
public record PlacesPart(List<Double> values) {
  private static final String FIELD = "places";

  /** A value of the same digits is not below because it went to the analysis scale and back. */
  private static final double ROUNDING = 1e-12;

  public PlacesPart {
    values = List.copyOf(values);
  }

  /** Notes values and settings that have no place. */
  public static void check(ObjectNode plan, Problems problems) {
    if (!plan.has(FIELD)) {
      return;
    }
    if (!plan.path("model").asText().equals("random-effects") && !ofLikelihood(plan)) {
      problems.add(
          FIELD,
          "not-with-this-model",
          "a value has its place among further studies by 'random-effects', and for proportions and"
              + " rates of single groups by 'exact-likelihood'; '"
              + plan.path("model").asText()
              + "' gives no such distribution here (for 'bayesian' ask 'probabilities')");
    }
    if (plan.path("subgroupVariance").asText().equals("common")) {
      problems.add(
          "subgroupVariance",
          "part-not-for-model",
          "places are told for groups that each have their own variance; take 'separate'");
    }
    if (plan.has("moderators") && !plan.has("predictions")) {
      problems.add(
          "predictions",
          "missing-field",
          "with moderators a value has its place at given values of them; name these");
    }
    for (int i = 0; i < plan.path(FIELD).size(); i++) {
      double value = plan.path(FIELD).get(i).asDouble();
      ShownValue.check(plan, value, FIELD + "[" + i + "]", problems);
    }
  }

  private static boolean ofLikelihood(ObjectNode plan) {
    String measure = plan.path("measure").asText();
    return ExactModels.asked(plan)
        && (measure.equals("proportion") || measure.equals("incidence-rate"));
  }

  /** The values a checked plan gives; none if it asks for no place. */
  public static PlacesPart of(ObjectNode full) {
    List<Double> values = new ArrayList<>();
    full.path(FIELD).forEach(one -> values.add(one.asDouble()));
    return new PlacesPart(values);
  }

  /** The places among all studies; empty if none are asked for. */
  public <D extends StudyData> Optional<List<PlaceResult>> of(Synthesis<D> synthesis) {
    return values.isEmpty()
        ? Optional.empty()
        : Optional.of(among(synthesis, synthesis.studies().pooled(), synthesis.pooler().all()));
  }

  /**
   * The places among the studies of one group; empty if none are asked for.
   *
   * @param pooled what pooling the group gave
   */
  <D extends StudyData> Optional<List<PlaceResult>> ofGroup(
      Synthesis<D> synthesis, String level, Pooled pooled) {
    if (values.isEmpty()) {
      return Optional.empty();
    }
    List<Studies.Entry<D>> entries =
        synthesis.studies().pooled().stream()
            .filter(entry -> entry.subgroup().equals(level))
            .toList();
    return Optional.of(among(synthesis, entries, pooled));
  }

  private <D extends StudyData> List<PlaceResult> among(
      Synthesis<D> synthesis, List<Studies.Entry<D>> entries, Pooled pooled) {
    List<D> data = entries.stream().map(entry -> entry.data().orElseThrow()).toList();
    BackTransform back = synthesis.measure().shown(data);
    Model model = synthesis.plan().model();
    List<Double> own;
    Optional<Predictive> further;
    if (model instanceof ExactModel exact) {
      double level = exact.limits().level();
      own =
          data.stream()
              .map(one -> synthesis.measure().shownStudy(one, level).orElseThrow().estimate())
              .toList();
      further = further(exact, data.size(), pooled);
    } else {
      EffectSample sample = new Studies<>(entries, List.of()).sample();
      own = IntStream.range(0, sample.size()).mapToObj(i -> back.apply(sample.effect(i))).toList();
      further = further(sample, pooled, model.settings());
    }
    List<PlaceResult> places = new ArrayList<>();
    for (double value : values) {
      double place = ShownValue.onAnalysisScale(value, back);
      double least = value - Math.abs(value) * ROUNDING;
      int below = (int) own.stream().filter(one -> one < least).count();
      places.add(
          new PlaceResult(
              value, share(further, place), OptionalInt.of(below), OptionalInt.of(own.size())));
    }
    return places;
  }

  /** The distribution from which the prediction interval of the likelihood is cut. */
  private static Optional<Predictive> further(ExactModel model, int studies, Pooled pooled) {
    return pooled
        .prediction()
        .flatMap(
            limits ->
                model
                    .limits()
                    .prediction()
                    .flatMap(reference -> reference.distribution(studies - 1))
                    .map(
                        about ->
                            new Predictive(
                                (limits.lower() + limits.upper()) / 2,
                                (limits.upper() - limits.lower())
                                    / 2
                                    / about.multiplier(model.limits().level()),
                                about)));
  }

  private static Optional<Predictive> further(
      EffectSample sample, Pooled pooled, PoolingSettings settings) {
    OptionalDouble tauSquared = pooled.heterogeneity().tauSquared();
    if (sample.size() < 2 || pooled.mean().isEmpty() || tauSquared.isEmpty()) {
      return Optional.empty();
    }
    WeightedMean mean =
        WeightedMean.of(
            sample, settings.interval().weightingTauSquared(sample, tauSquared.getAsDouble()));
    return settings.prediction().distribution(mean, tauSquared.getAsDouble());
  }

  /** The places at one prediction of a regression; empty if none are asked for. */
  public Optional<List<PlaceResult>> at(Optional<Predictive> further, BackTransform back) {
    List<PlaceResult> places = new ArrayList<>();
    for (double value : values) {
      double place = ShownValue.onAnalysisScale(value, back);
      places.add(
          new PlaceResult(value, share(further, place), OptionalInt.empty(), OptionalInt.empty()));
    }
    return places.isEmpty() ? Optional.empty() : Optional.of(places);
  }

  private static OptionalDouble share(Optional<Predictive> further, double place) {
    return further.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(further.get().below(place));
  }
}
