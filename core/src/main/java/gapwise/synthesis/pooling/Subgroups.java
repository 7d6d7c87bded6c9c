package gapwise.synthesis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.effect.Interval;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.GroupMeans;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import gapwise.synthesis.heterogeneity.TauSquared;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Groups of studies pooled apart and compared: Borenstein and Higgins, Prev Sci 2013;14:134. Each
 * group has its own variance between studies, or all share one from the model with a mean a group.
 *
 * @param groups in the order in which they first appear
 * @param test whether groups differ
 * @param tauSquared the variance all groups share, if they do
 * @param warnings what a reader must know of all groups; each group has its own besides
 */
public record Subgroups(
    List<Group> groups, GroupTest test, OptionalDouble tauSquared, List<Problem> warnings) {

  /**
   * One group.
   *
   * @param level its name
   * @param studies how many
   */
  public record Group(String level, int studies, Pooled pooled) {}

  public Subgroups {
    groups = List.copyOf(groups);
    warnings = List.copyOf(warnings);
  }

  /** Each group with its own variance between studies; that of a group of one study is 0. */
  public static Subgroups separate(
      EffectSample sample, List<String> levels, PoolingSettings settings) {
    return apart(
        levels,
        at -> InverseVariance.pool(sample.at(at), settings),
        settings.estimator().isPresent());
  }

  /**
   * Each group pooled by itself.
   *
   * @param spread whether a variance between studies is estimated; that of a group of one is 0
   */
  public static Subgroups apart(
      List<String> levels, Function<List<Integer>, Pooled> pool, boolean spread) {
    return apart(
        levels,
        at -> {
          Pooled pooled = pool.apply(at);
          boolean set = at.size() == 1 && spread && pooled.mean().isPresent();
          return set ? pooled.with(pooled.heterogeneity().withTauSquared(0)) : pooled;
        });
  }

  /** Each group pooled by itself, whatever the way; {@code pool} takes the places of studies. */
  public static Subgroups apart(List<String> levels, Function<List<Integer>, Pooled> pool) {
    List<Group> groups = new ArrayList<>();
    places(levels).forEach((level, at) -> groups.add(new Group(level, at.size(), pool.apply(at))));
    return compared(groups, OptionalDouble.empty(), List.of());
  }

  /** Each group pooled by itself, without a test between them. */
  public static Subgroups untested(List<String> levels, Function<List<Integer>, Pooled> pool) {
    return new Subgroups(
        apart(levels, pool).groups(), GroupTest.NONE, OptionalDouble.empty(), List.of());
  }

  /** Groups that share one variance between studies. */
  public static Subgroups common(
      EffectSample sample, List<String> levels, PoolingSettings settings) {
    Map<String, List<Integer>> places = places(levels);
    if (settings.estimator().isEmpty()
        || sample.hasZeroVariance()
        || !sample.isWithinArithmetic()
        || sample.size() <= places.size()) {
      Subgroups apart = separate(sample, levels, settings);
      return sample.size() > places.size()
          ? apart
          : new Subgroups(
              apart.groups(),
              GroupTest.NONE,
              OptionalDouble.empty(),
              plus(
                  apart.warnings(),
                  new Problem(
                      "",
                      "too-few-studies",
                      "every group has one study, so groups share no variance that could be"
                          + " estimated")));
    }
    List<String> names = List.copyOf(places.keySet());
    GroupMeans model = GroupMeans.of(levels.stream().map(names::indexOf).toList());
    TauSquared tauSquared = settings.estimator().get().estimate(sample, model);
    if (tauSquared instanceof TauSquared.NotEstimable not) {
      List<Group> groups = new ArrayList<>();
      places.forEach(
          (level, at) ->
              groups.add(
                  new Group(
                      level,
                      at.size(),
                      Pooled.without(
                          own(sample.at(at)), new Problem("", not.code(), not.reason())))));
      return compared(groups, OptionalDouble.empty(), List.of());
    }
    double shared = ((TauSquared.Estimate) tauSquared).value();
    GroupMeans.GroupFit fit = model.fit(sample, sample.weights(shared));
    double scale = ResidualVariance.scale(sample, model, shared);
    boolean known = settings.prediction().reference().takesSpreadAsKnown();
    Optional<UnknownTau> unknown = known ? Optional.empty() : UnknownTau.of(sample, model, shared);
    List<Group> groups = new ArrayList<>();
    for (int g = 0; g < names.size(); g++) {
      int group = g;
      List<Integer> at = Objects.requireNonNull(places.get(names.get(g)), names.get(g));
      WeightedMean mean = new WeightedMean(sample, model, fit.mean(g), fit.weightSum(g), scale);
      Optional<Interval> prediction =
          known
              ? settings.prediction().around(mean, shared, settings.level())
              : unknown.map(tau -> tau.further(group).interval(settings.level()));
      groups.add(
          new Group(
              names.get(g), at.size(), shared(sample.at(at), mean, shared, prediction, settings)));
    }
    return compared(
        groups,
        OptionalDouble.of(shared),
        known || unknown.isPresent()
            ? List.of()
            : List.of(settings.prediction().missing(sample, model)));
  }

  private static Pooled shared(
      EffectSample group,
      WeightedMean mean,
      double tauSquared,
      Optional<Interval> prediction,
      PoolingSettings settings) {
    List<Double> weights = new ArrayList<>();
    for (double weight : group.weights(tauSquared)) {
      weights.add(weight / mean.weightSum());
    }
    PooledMean pooled = settings.interval().around(mean, settings.level());
    List<Problem> warnings =
        new ArrayList<>(settings.interval().caution(mean, settings.level()).stream().toList());
    if (pooled.standardError() == 0) {
      warnings.add(new Problem("", "zero-width-interval", say("analysis.all-groups-equal")));
    }
    InverseVariance.withoutWidth(pooled, prediction).ifPresent(warnings::add);
    return new Pooled(
        Optional.of(pooled),
        prediction,
        own(group).withTauSquared(tauSquared),
        weights,
        OptionalDouble.of(mean.standardError()),
        Optional.empty(),
        warnings);
  }

  private static Heterogeneity own(EffectSample group) {
    return InverseVariance.fromQ(group, GroupMeans.one(group));
  }

  private static Subgroups compared(List<Group> groups, OptionalDouble shared, List<Problem> more) {
    List<Problem> warnings = new ArrayList<>(more);
    if (groups.size() == 1) {
      warnings.add(new Problem("", "too-few-studies", say("analysis.only-one-group")));
    } else if (GroupTest.alone(groups)) {
      warnings.add(
          new Problem(
              "",
              "no-subgroup-test",
              say(
                  "analysis.no-subgroup-test",
                  Map.of(
                      "groups",
                      groups.stream()
                          .filter(group -> group.studies() == 1)
                          .map(group -> "'" + group.level() + "'")
                          .collect(Collectors.joining(", "))))));
    }
    return new Subgroups(groups, GroupTest.of(groups, shared.isPresent()), shared, warnings);
  }

  private static Map<String, List<Integer>> places(List<String> levels) {
    Map<String, List<Integer>> places = new LinkedHashMap<>();
    for (int i = 0; i < levels.size(); i++) {
      places.computeIfAbsent(levels.get(i), level -> new ArrayList<>()).add(i);
    }
    return places;
  }

  private static List<Problem> plus(List<Problem> list, Problem one) {
    List<Problem> more = new ArrayList<>(list);
    more.add(one);
    return more;
  }
}
