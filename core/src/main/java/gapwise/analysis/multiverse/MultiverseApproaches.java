package gapwise.analysis.multiverse;

import gapwise.analysis.moderators.NamedSum;
import gapwise.analysis.pooling.Pooler;
import gapwise.analysis.pooling.PoolingPlan;
import gapwise.analysis.pooling.Studies;
import gapwise.analysis.pooling.ZeroVariances;
import gapwise.analysis.rows.DataTable;
import gapwise.budget.Work;
import gapwise.effect.EmptyCells;
import gapwise.effect.Measure;
import gapwise.effect.StudyData;
import gapwise.effect.StudyEffect;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.multiverse.Approach;
import gapwise.synthesis.multiverse.Body;
import gapwise.synthesis.multiverse.EffectApproach;
import gapwise.synthesis.multiverse.PooledApproach;
import gapwise.synthesis.multiverse.Settings;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntConsumer;

/**
 * Every way of reading and pooling the rows that a multiverse asks for, each as the plan of a
 * synthesis would have it.
 *
 * @param sum what is told of a regression; empty for a pooled value
 */
record MultiverseApproaches<D extends StudyData>(
    MultiversePlan plan,
    MultiverseChoices choices,
    Studies<D> studies,
    DataTable table,
    Optional<NamedSum> sum) {
  private static final Set<String> OF_THE_WHOLE = Set.of("no-events", "all-events");

  /**
   * All of them.
   *
   * @param listed is told how many ways there are so far, and may refuse to have more
   */
  List<Approach> all(IntConsumer listed) {
    List<Approach> approaches = new ArrayList<>();
    if (plan.vary().models().contains("random-effects") || plan.commonByEffects()) {
      List<String> scales = plan.vary().scales();
      for (String scale : scales.isEmpty() ? List.of(plan.base().scale()) : scales) {
        Settings onScale = choices.with(choices.none(), MultiverseChoices.SCALE, scale);
        for (String spread : choices.levels(MultiverseChoices.MISSING_SPREAD)) {
          Settings settings = choices.with(onScale, MultiverseChoices.MISSING_SPREAD, spread);
          ofScale(scale, settings, approaches, listed);
        }
      }
    }
    plan.fromCounts().forEach(way -> approaches.add(fromCounts(way)));
    return approaches;
  }

  private void ofScale(
      String scale, Settings onScale, List<Approach> approaches, IntConsumer listed) {
    List<AskedCells> rules = plan.vary().emptyCells();
    boolean used = plan.usesEmptyCells().getOrDefault(scale, false);
    if (rules.isEmpty() || !used) {
      EmptyCells own = used ? plan.base().options().emptyCells() : EmptyCells.USUAL;
      approaches.add(byEffects(plan.reading(scale, own), onScale));
      return;
    }
    int ways = 0;
    for (AskedCells rule : rules) {
      Work.check();
      Settings settings = choices.with(onScale, MultiverseChoices.EMPTY_CELLS, rule.words());
      approaches.add(byEffects(plan.reading(scale, rule.rule()), settings));
      ways += approaches.get(approaches.size() - 1).ways().size();
      listed.accept(ways);
    }
  }

  private Approach byEffects(PoolingPlan reading, Settings settings) {
    Measure<D> asReported = same(reading.how());
    boolean borrows =
        choices
            .told(settings)
            .getOrDefault(MultiverseChoices.MISSING_SPREAD, "")
            .equals(MultiverseChoices.BORROW);
    Measure<D> measure = borrows ? asReported.withBorrowedSpread().orElse(asReported) : asReported;
    if (sum.isPresent()) {
      return moderated(sum.get()).byEffects(reading.scale(), settings, rows -> body(measure, rows));
    }
    return new EffectApproach(reading.scale(), ways(settings), rows -> body(measure, rows));
  }

  private ModeratedApproaches moderated(NamedSum one) {
    Optional<String> cluster = plan.moderated().flatMap(MultiversePlan.Moderated::cluster);
    return new ModeratedApproaches(
        plan,
        choices,
        one,
        studies.all().stream().map(entry -> cluster.map(entry.row()::text).orElse("")).toList());
  }

  private List<EffectApproach.Way> ways(Settings settings) {
    List<EffectApproach.Way> ways = new ArrayList<>();
    for (String model : plan.vary().models()) {
      Settings ofModel = choices.with(settings, MultiverseChoices.MODEL, model);
      if (model.equals("common-effect") && plan.commonByEffects()) {
        ways.add(new EffectApproach.Way(ofModel, plan.common()));
      } else if (model.equals("random-effects")) {
        random(ofModel, ways);
      }
    }
    return ways;
  }

  private void random(Settings settings, List<EffectApproach.Way> ways) {
    for (String estimator : plan.vary().estimators()) {
      Settings estimated = choices.with(settings, MultiverseChoices.ESTIMATOR, estimator);
      for (String interval : plan.vary().limits().intervals()) {
        ways.add(
            new EffectApproach.Way(
                choices.with(estimated, MultiverseChoices.INTERVAL, interval),
                plan.random(estimator, interval)));
      }
    }
  }

  private Body body(Measure<D> measure, List<Integer> rows) {
    List<D> data = rows.stream().map(i -> studies.all().get(i).data().orElseThrow()).toList();
    List<StudyEffect> effects = ZeroVariances.setApart(plan.base(), measure.effects(data));
    double[] estimates = new double[data.size()];
    double[] variances = new double[data.size()];
    List<D> pooled = new ArrayList<>(data.size());
    List<Integer> places = new ArrayList<>(data.size());
    Set<String> reasons = new LinkedHashSet<>();
    for (int i = 0; i < data.size(); i++) {
      StudyEffect effect = effects.get(i);
      if (effect.leftOut().isPresent()) {
        reasons.add(effect.leftOut().get().code());
      } else {
        estimates[pooled.size()] = effect.estimate().orElseThrow();
        variances[pooled.size()] = effect.variance().orElseThrow();
        pooled.add(data.get(i));
        places.add(rows.get(i));
      }
    }
    String only = reasons.size() == 1 ? reasons.iterator().next() : "";
    return new Body(
        EffectSample.of(
            java.util.Arrays.copyOf(estimates, pooled.size()),
            java.util.Arrays.copyOf(variances, pooled.size())),
        measure.shown(pooled),
        places,
        OF_THE_WHOLE.contains(only) ? only : "no-studies");
  }

  private Approach fromCounts(MultiversePlan.FromCounts way) {
    PoolingPlan variant = way.how();
    Measure<D> measure = same(variant.how());
    Studies<D> read = Studies.read(variant, measure, table);
    if (sum.isPresent()) {
      return moderated(sum.get())
          .fromCounts(
              way,
              rows -> {
                List<Integer> at = rows.stream().filter(i -> read.all().get(i).pooled()).toList();
                return new ModeratedApproaches.Counted(
                    at,
                    at.stream().map(i -> read.all().get(i).data().orElseThrow()).toList(),
                    measure.shown(read.pooledData()));
              });
    }
    Pooler pooler = variant.model().pooler(read);
    Map<Integer, Integer> places = new LinkedHashMap<>();
    for (int i = 0; i < read.all().size(); i++) {
      if (read.all().get(i).pooled()) {
        places.put(i, places.size());
      }
    }
    List<D> data = read.pooledData();
    return new PooledApproach(
        variant.scale(),
        choices.with(
            choices.with(choices.none(), MultiverseChoices.MODEL, way.model()),
            MultiverseChoices.INTERVAL,
            way.interval()),
        rows -> {
          List<Integer> at = rows.stream().filter(places::containsKey).map(places::get).toList();
          return new PooledApproach.PooledRows(
              pooler.withoutFurther(at),
              measure.shown(at.stream().map(data::get).toList()),
              at.size());
        });
  }

  /** A measure of the same name reads the same kind of data whatever its scale. */
  @SuppressWarnings("unchecked")
  private <E extends StudyData> Measure<E> same(Measure<?> measure) {
    return (Measure<E>) measure;
  }
}
