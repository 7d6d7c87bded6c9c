package gapwise.analysis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.Columns;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.ReportedRow;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.effect.Measure;
import gapwise.effect.StudyData;
import gapwise.effect.StudyEffect;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.heterogeneity.EffectSample;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The rows of a synthesis with their effects: which can be pooled, which not and why.
 *
 * @param <D> what a study reports
 * @param all every data row, in its order
 * @param warnings about rows
 */
public record Studies<D extends StudyData>(List<Entry<D>> all, List<Result.Warning> warnings) {
  public Studies {
    all = List.copyOf(all);
    warnings = List.copyOf(warnings);
  }

  /**
   * One row.
   *
   * @param data empty if the row lacks something
   * @param effect empty without data
   * @param subgroup empty text if none is asked for
   */
  public record Entry<D extends StudyData>(
      DataTable.Row row,
      String label,
      Optional<D> data,
      Optional<StudyEffect> effect,
      String subgroup) {
    public boolean pooled() {
      return effect.isPresent() && effect.get().leftOut().isEmpty();
    }
  }

  /**
   * Reads the rows and takes their effects.
   *
   * @throws WrongInputException with everything that is wrong with columns and rows
   */
  public static <D extends StudyData> Studies<D> read(
      PoolingPlan plan, Measure<D> measure, DataTable table) {
    Work.require(
        Limit.STUDIES,
        table.rows().size(),
        "source",
        "Pool one outcome at a time, or run the plan on the command line with --limit studies="
            + table.rows().size()
            + ".");
    Problems problems = new Problems();
    List<String> roles = new ArrayList<>(List.of("study", "year"));
    List<String> required = new ArrayList<>();
    for (Measure.Role role : measure.roles()) {
      roles.add(role.name());
      if (role.required()) {
        required.add(role.name());
      }
    }
    Columns columns = Columns.resolve(plan.head().named(), table, roles, required, problems);
    checkSubgroup(plan, table, problems);
    String cluster = plan.model().cluster().orElse("");
    Optional<String> grouping = plan.groups().map(PoolingPlan.Groups::column);
    String ofBlanks =
        plan.groups().filter(PoolingPlan.Groups::blanksApart).isPresent()
            ? PoolingPlan.Groups.NOT_STATED
            : "";
    if (!cluster.isEmpty() && !table.columns().contains(cluster)) {
      problems.add(
          "cluster",
          "unknown-column",
          "there is no column '" + cluster + "'; the data have " + table.columns());
    }
    List<Result.Warning> warnings = new ArrayList<>();
    List<Entry<D>> entries = new ArrayList<>();
    for (DataTable.Row row : table.rows()) {
      ReportedRow reported = new ReportedRow(columns, row, problems);
      String label = columns.label(row);
      Optional<D> read = measure.read(reported);
      Optional<D> data = read.filter(d -> cluster.isEmpty() || !row.text(cluster).isEmpty());
      reported.lacking().ifPresent(warnings::add);
      if (read.isPresent() && data.isEmpty()) {
        warnings.add(row.warning("missing-value", withoutValue(row, cluster), label));
      }
      String group =
          grouping.map(row::text).map(text -> text.isEmpty() ? ofBlanks : text).orElse("");
      if (grouping.isPresent() && group.isEmpty() && data.isPresent()) {
        warnings.add(row.warning("missing-value", withoutValue(row, grouping.get()), label));
      }
      entries.add(new Entry<>(row, label, data, Optional.empty(), group));
    }
    if (plan.options().correlation().isPresent() && takesChanges(plan) && !table.rows().isEmpty()) {
      warnings.add(
          Result.Warning.of(
              "correlation-stated-by-plan",
              say(
                  "analysis.correlation-stated-by-plan",
                  Map.of(
                      "correlation", String.valueOf(plan.options().correlation().getAsDouble())))));
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return new Studies<>(withEffects(plan, measure, entries, warnings), warnings);
  }

  /** Whether rows may be changes in the same patients. */
  private static boolean takesChanges(PoolingPlan plan) {
    boolean mean = plan.measure().equals("mean") && plan.scale().equals("raw");
    return mean || plan.measure().equals("mean-difference");
  }

  private static String withoutValue(DataTable.Row row, String column) {
    return say("analysis.row-left-out", Map.of("row", row.place(), "column", column));
  }

  private static void checkSubgroup(PoolingPlan plan, DataTable table, Problems problems) {
    plan.groups()
        .map(PoolingPlan.Groups::column)
        .filter(column -> !table.columns().contains(column))
        .ifPresent(
            column ->
                problems.add(
                    "subgroup",
                    "unknown-column",
                    "there is no column '" + column + "'; the data have " + table.columns()));
  }

  private static <D extends StudyData> List<Entry<D>> withEffects(
      PoolingPlan plan, Measure<D> measure, List<Entry<D>> entries, List<Result.Warning> warnings) {
    List<Integer> at = new ArrayList<>();
    List<D> data = new ArrayList<>();
    for (int i = 0; i < entries.size(); i++) {
      boolean blank = plan.groups().isPresent() && entries.get(i).subgroup().isEmpty();
      if (entries.get(i).data().isPresent() && !blank) {
        at.add(i);
        data.add(entries.get(i).data().get());
      }
    }
    List<StudyEffect> effects = ZeroVariances.setApart(plan, measure.effects(data));
    List<Entry<D>> full = new ArrayList<>(entries);
    for (int i = 0; i < at.size(); i++) {
      Entry<D> entry = entries.get(at.get(i));
      StudyEffect effect = effects.get(i);
      effect
          .leftOut()
          .ifPresent(why -> warnings.add(about(entry, StudyWarnings.leftOut(why, entry.label()))));
      if (measure.fromMedian(data.get(i))) {
        warnings.add(about(entry, StudyWarnings.fromMedian(entry.label())));
      }
      if (measure.looksSkewed(data.get(i))) {
        warnings.add(about(entry, StudyWarnings.looksSkewed(entry.label())));
      }
      if (measure.limitsOffCentre(data.get(i))) {
        warnings.add(about(entry, StudyWarnings.limitsOffCentre(entry.label())));
      }
      StudyWarnings.fromTest(measure.fromTest(data.get(i)), entry.label())
          .ifPresent(warning -> warnings.add(about(entry, warning)));
      full.set(
          at.get(i),
          new Entry<>(
              entry.row(), entry.label(), entry.data(), Optional.of(effect), entry.subgroup()));
    }
    StudyWarnings.cellsAdded(effects).ifPresent(warnings::add);
    return full;
  }

  private static Result.Warning about(Entry<?> entry, Result.Warning warning) {
    return warning.about(entry.row().studyId(), entry.row().armId());
  }

  /** The rows that are pooled. */
  public List<Entry<D>> pooled() {
    return all.stream().filter(Entry::pooled).toList();
  }

  /** Where the pooled rows of one group stand among all that are pooled. */
  public List<Integer> placesOf(String subgroup) {
    List<Entry<D>> pooled = pooled();
    return IntStream.range(0, pooled.size())
        .filter(i -> pooled.get(i).subgroup().equals(subgroup))
        .boxed()
        .toList();
  }

  /** What the pooled rows report. */
  public List<D> pooledData() {
    return pooled().stream().map(entry -> entry.data().orElseThrow()).toList();
  }

  /** Their effects. */
  public EffectSample sample() {
    List<StudyEffect> effects = pooled().stream().map(e -> e.effect().orElseThrow()).toList();
    return EffectSample.of(
        effects.stream().map(e -> e.estimate().orElseThrow()).toList(),
        effects.stream().map(e -> e.variance().orElseThrow()).toList());
  }
}
