package gapwise.analysis.pooling;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.effect.BackTransform;
import gapwise.effect.Measure;
import gapwise.effect.MeasureOptions;
import gapwise.effect.StudyData;
import gapwise.problem.Problems;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.Predictive;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * The field {@code places}: where values stand among the studies pooled and in the distribution of
 * the true result of a further one.
 *
 * @param values as people read them; none if no place is asked for
 */
public record PlacesPart(List<Double> values) {
  private static final String FIELD = "places";

  private static final Set<String> WITH_A_DISTRIBUTION = Set.of("random-effects", "bayesian");

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
    if (!WITH_A_DISTRIBUTION.contains(plan.path("model").asText()) && !ofLikelihood(plan)) {
      problems.add(
          FIELD,
          "not-with-this-model",
          "a value has its place among further studies by 'random-effects', by 'bayesian', and for"
              + " proportions and rates of single groups by 'exact-likelihood'; '"
              + plan.path("model").asText()
              + "' gives no such distribution here");
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
    List<Integer> all = IntStream.range(0, synthesis.studies().pooled().size()).boxed().toList();
    return values.isEmpty()
        ? Optional.empty()
        : Optional.of(among(synthesis, all, synthesis.pooler().all()));
  }

  /**
   * The places among the studies of one group; empty if none are asked for.
   *
   * @param pooled what pooling the group gave
   */
  public <D extends StudyData> Optional<List<PlaceResult>> ofGroup(
      Synthesis<D> synthesis, String level, Pooled pooled) {
    return values.isEmpty()
        ? Optional.empty()
        : Optional.of(among(synthesis, synthesis.studies().placesOf(level), pooled));
  }

  private <D extends StudyData> List<PlaceResult> among(
      Synthesis<D> synthesis, List<Integer> places, Pooled pooled) {
    List<Studies.Entry<D>> pooledEntries = synthesis.studies().pooled();
    List<Studies.Entry<D>> entries = places.stream().map(pooledEntries::get).toList();
    BackTransform back =
        synthesis.measure().shown(entries.stream().map(one -> one.data().orElseThrow()).toList());
    List<Double> own = own(synthesis, entries, back);
    Optional<Pooler.Further> further = synthesis.pooler().further(places, pooled);
    List<PlaceResult> told = new ArrayList<>();
    for (double value : values) {
      double place = ShownValue.onAnalysisScale(value, back);
      double least = value - Math.abs(value) * ROUNDING;
      int below = (int) own.stream().filter(one -> one < least).count();
      told.add(
          new PlaceResult(
              value,
              further.isEmpty()
                  ? OptionalDouble.empty()
                  : OptionalDouble.of(further.get().below(place)),
              OptionalInt.of(below),
              OptionalInt.of(own.size())));
    }
    return told;
  }

  /** What each study found itself, as people read it; none of two groups one of which is empty. */
  private static <D extends StudyData> List<Double> own(
      Synthesis<D> synthesis, List<Studies.Entry<D>> entries, BackTransform back) {
    boolean counts = synthesis.plan().options().pooling() == MeasureOptions.Pooling.COUNTS;
    double level = synthesis.plan().model().settings().level();
    List<Double> own = new ArrayList<>();
    for (Studies.Entry<D> entry : entries) {
      Optional<Measure.ShownStudy> exact =
          counts
              ? synthesis.measure().shownStudy(entry.data().orElseThrow(), level)
              : Optional.empty();
      OptionalDouble effect = entry.effect().orElseThrow().estimate();
      exact.ifPresent(one -> own.add(one.estimate()));
      if (exact.isEmpty() && effect.isPresent()) {
        own.add(back.apply(effect.getAsDouble()));
      }
    }
    return own;
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
