package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.bayesian.BayesianResult;
import gapwise.analysis.result.Result;
import gapwise.analysis.subgroups.SubgroupsResult;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.selection.RowsByArm;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** An answer by method or words of a detail, each with its rows in order of missing bone. */
public final class Blocks {
  /** What the analysis says of a study whose mean has no logarithm. */
  private static final String MEAN_OF_ZERO = "mean-not-positive";

  /** A figure has room for the headlines of so many methods. */
  private static final int MOST_IN_A_FIGURE = 3;

  private Blocks() {}

  /**
   * One row with what the result says of it.
   *
   * @param row the row
   * @param study its place in the result
   * @param meanOfZero whether a mean of 0 keeps it out, since a logarithm needs one above 0
   */
  record Line(SelectedRow row, Result.Study study, boolean meanOfZero) {

    /**
     * What the row shows, if it has a value. A share of patients stands with its exact interval, so
     * that 18 of 18 is 100 of 100 and not a corrected number.
     */
    Optional<Estimate> estimate() {
      return study
          .shown()
          .map(shown -> Estimate.of(shown.estimate(), shown.lower(), shown.upper()));
    }
  }

  /**
   * One method, or one word of a detail.
   *
   * @param of which of them
   * @param summary its pooled value; empty where there is none, or none that says something
   * @param open the average that says next to nothing, so that it is not given; else empty
   * @param onlyLimit 1 if every patient had the event and 0 if none had, so that there is no pooled
   *     value; else empty
   * @param posterior where the model gives one
   */
  record Block(
      GroupName of,
      List<Line> lines,
      Optional<Result.Summary> summary,
      Optional<Estimate> open,
      OptionalDouble onlyLimit,
      Result.Heterogeneity heterogeneity,
      Optional<BayesianResult> posterior) {
    private static Block of(
        GroupName name,
        List<Line> lines,
        Result result,
        Optional<Result.Summary> summary,
        OptionalDouble onlyLimit,
        Result.Heterogeneity heterogeneity,
        Optional<BayesianResult> posterior) {
      boolean shares = result.plan().path("measure").asText().equals("proportion");
      Optional<Estimate> open =
          summary
              .map(one -> PooledValue.average(one.shown()))
              .filter(average -> PooledValue.saysNextToNothing(average, shares));
      return new Block(
          name,
          lines,
          summary.filter(one -> open.isEmpty()),
          open,
          onlyLimit,
          heterogeneity,
          posterior);
    }

    List<SelectedRow> rows() {
      return lines.stream().map(Line::row).toList();
    }

    /** The one row with a value; empty where there are several or none. */
    Optional<Line> alone() {
      List<Line> valued = lines.stream().filter(line -> line.study().shown().isPresent()).toList();
      return valued.size() == 1 ? Optional.of(valued.get(0)) : Optional.empty();
    }

    /** Rows that entered the pooled value. */
    List<SelectedRow> pooled() {
      return lines.stream()
          .filter(line -> line.study().weightPercent().isPresent())
          .map(Line::row)
          .toList();
    }

    /** Where the true value of a new centre may lie; empty where it cannot be told. */
    Optional<Limits> newCentre() {
      int groups = pooled().size();
      return summary.flatMap(
          one ->
              posterior.isPresent()
                  ? PooledValue.newCentreByPosterior(one.shown(), groups)
                  : PooledValue.newCentre(one.shown(), groups));
    }

    /** Whether its rows are events among patients, of which one patient can have several. */
    boolean countsEvents() {
      return lines.stream().anyMatch(line -> line.row().value() instanceof ReportedValue.Tally);
    }

    /** How many rows a mean of 0 keeps out of the pooled value. */
    int meansOfZero() {
      return (int) lines.stream().filter(Line::meanOfZero).count();
    }
  }

  static List<Block> of(Answer answer, Result result) {
    List<Line> lines = lines(answer, result);
    return split(result)
        .map(kind -> byDetail(kind, lines, result))
        .orElseGet(() -> byMethod(lines, result));
  }

  /** The detail that a result is split by; empty where it is not. */
  public static Optional<DetailKind> split(Result result) {
    return GroupName.split(result.plan().path("subgroup").asText());
  }

  private static List<Block> byDetail(DetailKind kind, List<Line> lines, Result result) {
    List<Method> methods =
        lines.stream().map(line -> line.row().arm().method().principal()).distinct().toList();
    Method method = methods.size() == 1 ? methods.get(0) : Method.SEVERAL;
    Map<GroupName, List<Line>> byWord =
        lines.stream()
            .sorted(Comparator.comparingDouble(Blocks::length))
            .collect(
                Collectors.groupingBy(line -> GroupName.of(line.row(), method, Optional.of(kind))));
    return GroupName.all(method, kind).stream()
        .filter(byWord::containsKey)
        .map(name -> block(name, byWord.getOrDefault(name, List.of()), result))
        .toList();
  }

  private static List<Block> byMethod(List<Line> lines, Result result) {
    Map<Method, List<Line>> found =
        lines.stream()
            .sorted(Comparator.comparingDouble(Blocks::length))
            .collect(Collectors.groupingBy(line -> line.row().arm().method().principal()));
    Map<Method, List<Line>> byMethod = new LinkedHashMap<>();
    Stream.concat(Method.vocabulary().all().stream(), Stream.of(Method.SEVERAL))
        .filter(found::containsKey)
        .forEach(method -> byMethod.put(method, found.getOrDefault(method, List.of())));
    if (byMethod.size() > 1 && SynthesisResult.of(result).groups().isEmpty()) {
      // What is pooled over methods is the value of none of them.
      List<Line> together = byMethod.values().stream().flatMap(List::stream).toList();
      return List.of(block(GroupName.of(Method.SEVERAL), together, result));
    }
    return byMethod.entrySet().stream()
        .map(entry -> block(GroupName.of(entry.getKey()), entry.getValue(), result))
        .toList();
  }

  private static Block block(GroupName name, List<Line> lines, Result result) {
    SynthesisResult synthesis = SynthesisResult.of(result);
    if (synthesis.groups().isEmpty()) {
      return Block.of(
          name,
          lines,
          result,
          synthesis.summary(),
          synthesis.pooled().onlyLimit(),
          synthesis.heterogeneity().orElse(NOT_KNOWN),
          synthesis.bayesian());
    }
    Optional<SubgroupsResult.Subgroup> own = synthesis.group(name.level());
    return Block.of(
        name,
        lines,
        result,
        own.flatMap(SubgroupsResult.Subgroup::summary),
        own.map(SubgroupsResult.Subgroup::onlyLimit).orElse(OptionalDouble.empty()),
        own.map(SubgroupsResult.Subgroup::heterogeneity).orElse(NOT_KNOWN),
        own.flatMap(SubgroupsResult.Subgroup::bayesian));
  }

  private static final Result.Heterogeneity NOT_KNOWN =
      new Result.Heterogeneity(
          OptionalDouble.empty(),
          OptionalInt.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty());

  private static List<Line> lines(Answer answer, Result result) {
    Set<List<String>> atZero =
        result.warnings().stream()
            .filter(warning -> warning.code().equals(MEAN_OF_ZERO))
            .map(warning -> identity(warning.studyId(), warning.armId()))
            .collect(Collectors.toSet());
    RowsByArm rows = RowsByArm.of(answer.selection());
    List<Line> lines = new ArrayList<>();
    for (Result.Study study : SynthesisResult.of(result).studies()) {
      SelectedRow row =
          rows.row(study.studyId(), study.armId())
              .orElseThrow(
                  () ->
                      new IllegalStateException(
                          "the result tells of " + study.label() + ", which was not selected"));
      lines.add(new Line(row, study, atZero.contains(identity(study.studyId(), study.armId()))));
    }
    return lines;
  }

  private static List<String> identity(Optional<String> studyId, Optional<String> armId) {
    return List.of(studyId.orElse(""), armId.orElse(""));
  }

  private static double length(Line line) {
    return line.row()
        .defect()
        .map(defect -> defect.length().centreCentimetres())
        .filter(OptionalDouble::isPresent)
        .map(OptionalDouble::getAsDouble)
        .orElse(Double.MAX_VALUE);
  }

  /**
   * The pooled answer for the words of a figure that shows the same rows in another way: a funnel
   * or a line over lengths has numbers of its own, and the answer stays the pooled one. None where
   * there are too many methods for one figure.
   */
  static List<String> headlines(Selection selection) {
    Selection byMethod = selection.byMethod();
    long methods =
        byMethod.rows().stream().map(row -> row.arm().method().principal()).distinct().count();
    if (methods > MOST_IN_A_FIGURE) {
      return List.of();
    }
    Answer pooled = Answers.pooled(byMethod);
    return pooled
        .result()
        .map(result -> told(pooled, result).stream().map(Told::sentence).toList())
        .orElse(List.of());
  }

  /** The sentences of an answer, one method or word of a detail after another. */
  public static List<Told> told(Answer answer, Result result) {
    return of(answer, result).stream()
        .map(block -> Told.of(answer.question().outcome(), block))
        .toList();
  }

  /** How many series a mean of 0 keeps out of what is pooled. */
  public static int meansOfZero(Answer answer, Result result) {
    return (int) lines(answer, result).stream().filter(Line::meanOfZero).count();
  }

  /** What a figure must say of such series; empty where there are none. */
  static Optional<String> withoutZeros(Answer answer, Result result) {
    int series = meansOfZero(answer, result);
    return series == 0
        ? Optional.empty()
        : Optional.of(say("answer.without-zeros", Map.of("series", series)));
  }
}
