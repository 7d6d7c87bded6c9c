package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.budget.Work;
import gapwise.effect.Measure;
import gapwise.effect.Measures;
import gapwise.effect.StudyData;
import gapwise.effect.StudyEffect;
import gapwise.synthesis.multiverse.Approach;
import gapwise.synthesis.multiverse.Body;
import gapwise.synthesis.multiverse.EffectApproach;
import gapwise.synthesis.multiverse.PooledApproach;
import gapwise.synthesis.multiverse.Settings;
import gapwise.synthesis.pooling.EffectSample;
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
 */
record MultiverseApproaches<D extends StudyData>(
    MultiversePlan plan, MultiverseChoices choices, Studies<D> studies, DataTable table) {
  private static final Set<String> OF_THE_WHOLE = Set.of("no-events", "all-events");

  /**
   * All of them.
   *
   * @param listed is told how many ways there are so far, and may refuse to have more
   */
  List<Approach> all(IntConsumer listed) {
    List<Approach> approaches = new ArrayList<>();
    boolean byEffects =
        plan.vary().models().stream().anyMatch(model -> model.equals("random-effects"))
            || commonByEffects();
    if (byEffects) {
      List<String> scales = plan.vary().scales();
      for (String scale : scales.isEmpty() ? Measures.scales(plan.measure()) : scales) {
        ofScale(scale, approaches, listed);
      }
    }
    for (String model : plan.vary().models()) {
      if (model.equals("exact-likelihood")
          || (model.equals("common-effect") && !commonByEffects())) {
        approaches.add(fromCounts(model));
      }
    }
    return approaches;
  }

  /** Whether a common effect is wanted and is pooled by the variances of effects. */
  private boolean commonByEffects() {
    return plan.vary().models().contains("common-effect")
        && plan.json().path("pooling").asText("inverse-variance").equals("inverse-variance");
  }

  private void ofScale(String scale, List<Approach> approaches, IntConsumer listed) {
    ObjectNode onScale = MultiversePlan.synthesis(plan.json(), Map.of("scale", scale));
    if (plan.vary().emptyCells().isEmpty() || !PlanDefaults.usesContinuityCorrection(onScale)) {
      approaches.add(byEffects(scale, Optional.empty()));
      return;
    }
    int ways = 0;
    for (ObjectNode rule : plan.vary().emptyCells()) {
      Work.check();
      approaches.add(byEffects(scale, Optional.of(rule)));
      ways += approaches.get(approaches.size() - 1).ways().size();
      listed.accept(ways);
    }
  }

  private Approach byEffects(String scale, Optional<ObjectNode> emptyCells) {
    Map<String, Object> reading = new LinkedHashMap<>();
    emptyCells.ifPresent(
        rule -> rule.fields().forEachRemaining(one -> reading.put(one.getKey(), one.getValue())));
    if (!plan.vary().scales().isEmpty()) {
      reading.put("scale", scale);
    }
    reading.put("pooling", "inverse-variance");
    Settings settings = choices.with(choices.none(), MultiverseChoices.SCALE, scale);
    if (emptyCells.isPresent()) {
      settings =
          choices.with(
              settings, MultiverseChoices.EMPTY_CELLS, MultiverseChoices.words(emptyCells.get()));
    }
    List<EffectApproach.Way> ways = ways(reading, settings);
    Measure<D> measure = same(plan.with(commonFields(reading)).how());
    return new EffectApproach(scale, ways, rows -> body(measure, rows));
  }

  private List<EffectApproach.Way> ways(Map<String, Object> reading, Settings settings) {
    List<EffectApproach.Way> ways = new ArrayList<>();
    for (String model : plan.vary().models()) {
      Settings ofModel = choices.with(settings, MultiverseChoices.MODEL, model);
      if (model.equals("common-effect") && commonByEffects()) {
        ways.add(new EffectApproach.Way(ofModel, plan.with(commonFields(reading)).settings()));
      } else if (model.equals("random-effects")) {
        random(reading, ofModel, ways);
      }
    }
    return ways;
  }

  private void random(
      Map<String, Object> reading, Settings settings, List<EffectApproach.Way> ways) {
    for (String estimator : plan.vary().estimators()) {
      Settings estimated = choices.with(settings, MultiverseChoices.ESTIMATOR, estimator);
      for (String interval : plan.vary().intervals()) {
        Map<String, Object> fields = new LinkedHashMap<>(reading);
        fields.remove("pooling");
        fields.put("model", "random-effects");
        fields.put("betweenStudyVariance", estimator);
        fields.put("interval", interval);
        ways.add(
            new EffectApproach.Way(
                choices.with(estimated, MultiverseChoices.INTERVAL, interval),
                plan.with(fields).settings()));
      }
    }
  }

  private static Map<String, Object> commonFields(Map<String, Object> reading) {
    Map<String, Object> fields = new LinkedHashMap<>(reading);
    fields.put("model", "common-effect");
    fields.put("interval", "normal");
    return fields;
  }

  private Body body(Measure<D> measure, List<Integer> rows) {
    List<D> data = rows.stream().map(i -> studies.all().get(i).data().orElseThrow()).toList();
    List<StudyEffect> effects = measure.effects(data);
    double[] estimates = new double[data.size()];
    double[] variances = new double[data.size()];
    List<D> pooled = new ArrayList<>(data.size());
    Set<String> reasons = new LinkedHashSet<>();
    for (int i = 0; i < data.size(); i++) {
      StudyEffect effect = effects.get(i);
      if (effect.leftOut().isPresent()) {
        reasons.add(effect.leftOut().get().code());
      } else {
        estimates[pooled.size()] = effect.estimate().orElseThrow();
        variances[pooled.size()] = effect.variance().orElseThrow();
        pooled.add(data.get(i));
      }
    }
    String only = reasons.size() == 1 ? reasons.iterator().next() : "";
    return new Body(
        EffectSample.of(
            java.util.Arrays.copyOf(estimates, pooled.size()),
            java.util.Arrays.copyOf(variances, pooled.size())),
        measure.shown(pooled),
        OF_THE_WHOLE.contains(only) ? only : "no-studies");
  }

  private Approach fromCounts(String model) {
    SynthesisPlan variant = plan.with(MultiversePlan.ofModel(model, plan.measure()));
    return fromCounts(model, variant, this.<D>same(variant.how()));
  }

  private Approach fromCounts(String model, SynthesisPlan variant, Measure<D> measure) {
    Studies<D> read = Studies.read(variant, measure, table);
    Pooler pooler = Pooler.of(variant, read);
    Map<Integer, Integer> places = new LinkedHashMap<>();
    for (int i = 0; i < read.all().size(); i++) {
      if (read.all().get(i).pooled()) {
        places.put(i, places.size());
      }
    }
    List<D> data = read.pooledData();
    String scale = variant.json().path("scale").asText(Measures.scales(variant.measure()).get(0));
    return new PooledApproach(
        scale,
        choices.with(choices.none(), MultiverseChoices.MODEL, model),
        rows -> {
          List<Integer> at = rows.stream().filter(places::containsKey).map(places::get).toList();
          return new PooledApproach.PooledRows(
              pooler.at(at), measure.shown(at.stream().map(data::get).toList()), at.size());
        });
  }

  /** A measure of the same name reads the same kind of data whatever its scale. */
  @SuppressWarnings("unchecked")
  private <E extends StudyData> Measure<E> same(Measure<?> measure) {
    return (Measure<E>) measure;
  }
}
