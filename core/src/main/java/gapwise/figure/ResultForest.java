package gapwise.figure;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.Result;
import gapwise.evidence.Outcome;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Makes the forest plot of a result. Within a block, series stand in the order of their missing
 * bone, shortest first, so that an outcome that worsens with length shows as a slope.
 */
public final class ResultForest {
  private final Result result;
  private final List<SeriesFacts> facts;
  private final ResultWords words;
  private final String unit;

  private ResultForest(Result result, List<SeriesFacts> facts, ResultWords words, String unit) {
    this.result = result;
    this.facts = facts;
    this.words = words;
    this.unit = unit;
  }

  /**
   * The figure of a result on rows of the evidence base.
   *
   * @param result of a synthesis whose rows are those of the selection
   * @param selection the rows
   * @param href where the name of a series leads
   */
  public static Forest of(
      Result result, Selection selection, Function<SelectedRow, Optional<String>> href) {
    Outcome outcome = selection.question().outcome();
    List<SeriesFacts> facts =
        selection.rows().stream().map(row -> SeriesFacts.of(row, href)).toList();
    String unit = outcome.unit().map(u -> u.symbol()).orElse("");
    boolean invented = selection.rows().stream().anyMatch(row -> row.study().invented());
    ResultWords words = ResultWords.of(outcome, result, facts);
    List<LeftOut> never =
        selection.leftOut().stream()
            .map(
                left ->
                    new LeftOut(
                        left.label(), new Span.NotReported(), "", left.message(), Optional.empty()))
            .toList();
    return new ResultForest(result, facts, words, unit)
        .forest(never, "change " + selection.change(), invented);
  }

  /** The figure of a result on a plain table; empty for a task that pools nothing. */
  public static Optional<Forest> of(Result result) {
    if (result.studies().isEmpty()) {
      return Optional.empty();
    }
    List<SeriesFacts> facts =
        result.studies().get().stream()
            .map(study -> SeriesFacts.bare(study.label(), Row.OpenEnd.NONE))
            .toList();
    return Optional.of(
        new ResultForest(result, facts, ResultWords.of(result, facts), "")
            .forest(List.of(), "sha256 " + result.data().sha256().substring(0, 12), false));
  }

  private Forest forest(List<LeftOut> never, String dataVersion, boolean invented) {
    ObjectNode plan = result.plan();
    List<Block> blocks = blocks();
    List<LeftOut> leftOut = new ArrayList<>(notPooled());
    leftOut.addAll(never);
    return new Forest(
        words.heading(),
        ModelWords.measure(plan, unit),
        new AxisWords(
            ModelWords.axis(plan, unit), words.towardsLess(), words.towardsMore(), List.of()),
        blocks,
        Optional.empty(),
        leftOut,
        List.of(),
        List.of(ResultWords.CAUTION),
        new Provenance(
            pooledSeries(),
            words.participants(facts),
            ModelWords.model(plan),
            dataVersion,
            Optional.empty(),
            invented));
  }

  private int pooledSeries() {
    return (int) studies().stream().filter(study -> study.weightPercent().isPresent()).count();
  }

  private List<Result.Study> studies() {
    return result.studies().orElse(List.of());
  }

  private List<Block> blocks() {
    Map<String, List<Integer>> byName = new LinkedHashMap<>();
    for (int i = 0; i < facts.size(); i++) {
      if (studies().get(i).shown().isPresent() && isPooled(i)) {
        byName.computeIfAbsent(facts.get(i).block(), name -> new ArrayList<>()).add(i);
      }
    }
    List<Block> blocks = new ArrayList<>();
    byName.forEach((name, rows) -> blocks.add(block(name, rows)));
    return blocks;
  }

  /** Rows without weight were not pooled; where no row has one, the model has none to show. */
  private boolean isPooled(int i) {
    return pooledSeries() == 0 || studies().get(i).weightPercent().isPresent();
  }

  private Block block(String name, List<Integer> indices) {
    List<Row> rows =
        indices.stream()
            .sorted(
                Comparator.comparingDouble(
                        (Integer i) ->
                            facts.get(i).span().gapCentimetres().orElse(Double.MAX_VALUE))
                    .thenComparing(i -> facts.get(i).label()))
            .map(this::row)
            .toList();
    List<SeriesFacts> members = indices.stream().map(facts::get).toList();
    return new Block(name, rows, summary(name, rows.size(), members));
  }

  private Row row(int i) {
    Result.Study study = studies().get(i);
    SeriesFacts series = facts.get(i);
    Result.Estimate shown = study.shown().orElseThrow();
    return new Row(
        series.label(),
        series.detail(),
        series.span(),
        series.counts(),
        Estimate.of(shown.estimate(), shown.lower(), shown.upper()),
        study.weightPercent(),
        series.openEnd(),
        series.href());
  }

  private Summary summary(String name, int rows, List<SeriesFacts> members) {
    if (rows < 2) {
      return new Summary.NotPooled("Not pooled", "A single series; it stands for itself alone.");
    }
    Optional<Result.Summary> pooled =
        result
            .subgroups()
            .map(
                groups ->
                    groups.stream()
                        .filter(group -> group.level().equals(name))
                        .findFirst()
                        .flatMap(Result.Subgroup::summary))
            .orElse(result.summary());
    return pooled
        .map(summary -> pooled(summary.shown(), rows, words.participants(members)))
        .orElse(new Summary.NotPooled("Not pooled", "It cannot be estimated; see the warnings."));
  }

  private Summary pooled(Result.Shown shown, int rows, String participants) {
    return new Summary.Pooled(
        "Pooled, " + result.plan().path("model").asText().replace('-', ' '),
        Estimate.of(shown.estimate(), shown.lower(), shown.upper()),
        limits(shown.predictionLower(), shown.predictionUpper()),
        rows,
        participants);
  }

  private static Optional<Limits> limits(OptionalDouble lower, OptionalDouble upper) {
    return lower.isPresent() && upper.isPresent()
        ? Optional.of(new Limits(lower.getAsDouble(), upper.getAsDouble()))
        : Optional.empty();
  }

  /** Rows that stand in the table and could not enter, with what the result says of them. */
  private List<LeftOut> notPooled() {
    Map<String, String> reasons =
        result.warnings().stream()
            .filter(warning -> warning.study().isPresent())
            .collect(
                Collectors.toMap(
                    warning -> warning.study().get(),
                    Result.Warning::message,
                    (a, b) -> a + "; " + b));
    List<LeftOut> rows = new ArrayList<>();
    for (int i = 0; i < facts.size(); i++) {
      if (studies().get(i).shown().isEmpty() || !isPooled(i)) {
        SeriesFacts series = facts.get(i);
        rows.add(
            new LeftOut(
                series.label(),
                series.span(),
                series.counts(),
                reasons.getOrDefault(series.label(), "it could not enter"),
                series.href()));
      }
    }
    return rows;
  }
}
