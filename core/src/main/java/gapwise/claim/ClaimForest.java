package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.answer.AnswerForest;
import gapwise.answer.Cited;
import gapwise.answer.Edition;
import gapwise.answer.Large;
import gapwise.answer.People;
import gapwise.answer.PlainForest;
import gapwise.answer.StudyAddress;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.forest.Block;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.ForestRow;
import gapwise.figure.forest.ForestSummary;
import gapwise.figure.forest.Heading;
import gapwise.figure.value.Shown;
import gapwise.selection.SelectedRow;
import gapwise.wording.Defects;
import gapwise.wording.Values;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The studies that hold both methods of a claim, drawn: what each counted on both sides, which way
 * it points, and how much bone was missing on both.
 */
public final class ClaimForest {
  private final Claim claim;
  private final List<SelectedRow> rows;
  private final Forest plain;

  private ClaimForest(Verdict.Examined examined, Forest plain) {
    this.claim = examined.claim();
    this.rows = examined.rows().selection().rows();
    this.plain = plain;
  }

  /** The figure; empty where no study holds both methods with a number that can be drawn. */
  public static Optional<Large<Forest>> of(Verdict.Examined examined, Edition edition) {
    return examined
        .direct()
        .result()
        .map(
            result ->
                new ClaimForest(examined, PlainForest.of(result, edition))
                    .large(examined.direct(), drawn(result)))
        .filter(figure -> !figure.whole().blocks().get(0).rows().isEmpty());
  }

  /** The studies that have a row in the plain figure, in its order. */
  private static List<Result.Study> drawn(Result result) {
    return SynthesisResult.of(result).studies().stream()
        .filter(study -> study.shown().isPresent())
        .toList();
  }

  private Large<Forest> large(Part direct, List<Result.Study> studies) {
    JsonNode entered =
        direct.plan().map(plan -> plan.at("/source/rows")).orElseGet(MissingNode::getInstance);
    List<SelectedRow> shown = new ArrayList<>();
    List<ForestRow> told = new ArrayList<>();
    for (int at = 0; at < studies.size(); at++) {
      ForestRow row = plain.blocks().get(0).rows().get(at);
      String study = studies.get(at).studyId().orElse("");
      List<SelectedRow> first = side(study, claim.a().method());
      List<SelectedRow> second = side(study, claim.b().method());
      shown.addAll(first);
      shown.addAll(second);
      told.add(
          first.isEmpty() || second.isEmpty()
              ? row
              : row(row, first, second, counts(entered, study)));
    }
    Forest whole = forest(direct.sentences().subList(0, 1), told, shown);
    return Large.ofRows(
        whole,
        told,
        row -> row.weightPercent().orElse(0),
        (drawn, some) -> forest(Stream.of(direct.sentences().get(0), some).toList(), drawn, shown));
  }

  private Forest forest(List<String> sentences, List<ForestRow> drawn, List<SelectedRow> shown) {
    return new Forest(
        new Heading(plain.heading().title(), sentences, "", plain.heading().values()),
        plain.measure(),
        axis(),
        List.of(new Block("", drawn, summary())),
        Optional.empty(),
        List.of(),
        notes(),
        AnswerForest.CAUTIONS,
        provenance(shown));
  }

  /** The pooled value; one study is no average of several and has no mark of one. */
  private ForestSummary summary() {
    Block block = plain.blocks().get(0);
    return block.rows().size() > 1
        ? block.summary()
        : new ForestSummary.NotPooled(say("claim.figure-not-pooled"), say("claim.figure-alone"));
  }

  private List<SelectedRow> side(String study, Method method) {
    return rows.stream()
        .filter(row -> row.study().id().equals(study))
        .filter(row -> row.arm().method().principal().equals(method))
        .toList();
  }

  /** What entered of a study on both sides, as the plan has it; empty for numbers over a time. */
  private static Optional<String> counts(JsonNode entered, String study) {
    for (JsonNode row : entered) {
      if (row.path(DataTable.STUDY_ID).asText().equals(study)) {
        Optional<String> other = counted(row, "comparator.");
        return counted(row, "intervention.")
            .filter(one -> other.isPresent())
            .map(one -> say("claim.figure-counts", Map.of("one", one, "other", other.get())));
      }
    }
    return Optional.empty();
  }

  private static Optional<String> counted(JsonNode row, String group) {
    JsonNode total = row.path(group + "total");
    if (total.isNumber()) {
      return Optional.of(Values.ofTotal(row.path(group + "events").asInt(), total.asInt()));
    }
    JsonNode number = row.path(group + "n");
    return number.isNumber()
        ? Optional.of(say("claim.figure-people", Map.of("people", number.asInt())))
        : Optional.empty();
  }

  private static ForestRow row(
      ForestRow plain, List<SelectedRow> first, List<SelectedRow> second, Optional<String> counts) {
    Study study = first.get(0).study();
    List<String> detail = new ArrayList<>();
    counts.ifPresent(detail::add);
    detail.add(
        say("claim.figure-lengths", Map.of("one", lengths(first), "other", lengths(second))));
    study.design().map(Design::label).ifPresent(detail::add);
    return new ForestRow(
        plain.study(),
        String.join(", ", detail),
        Defects.span(first.get(0).defect()),
        "",
        plain.estimate(),
        plain.weightPercent(),
        plain.openEnd(),
        Optional.of(StudyAddress.of(study.id())),
        study.citation().line());
  }

  private static String lengths(List<SelectedRow> rows) {
    return rows.stream().map(ClaimForest::length).distinct().collect(Collectors.joining(", "));
  }

  private static String length(SelectedRow row) {
    OptionalDouble centre =
        row.defect()
            .map(defect -> defect.length().centreCentimetres())
            .orElse(OptionalDouble.empty());
    return centre.isPresent()
        ? say("claim.figure-length", Map.of("length", Shown.centimetres(centre.getAsDouble())))
        : say("claim.figure-no-length");
  }

  /** Which way more of the outcome lies, so that a reader needs not know what a ratio divides. */
  private AxisWords axis() {
    boolean counted =
        claim.outcome().isEvent() || claim.outcome().kind() == Outcome.Kind.CATEGORIES;
    return new AxisWords(
        plain.axis().heading(),
        towards(counted, claim.b()),
        towards(counted, claim.a()),
        List.of());
  }

  private static String towards(boolean counted, Claim.Side side) {
    return say(
        counted ? "claim.figure-more-often" : "claim.figure-more-of-it",
        Map.of("method", side.name()));
  }

  private List<String> notes() {
    List<String> notes = new ArrayList<>();
    notes.add(
        say("claim.figure-reading", Map.of("first", claim.a().name(), "second", claim.b().name())));
    claim.outcome().caution().ifPresent(notes::add);
    return notes;
  }

  private FigureProvenance provenance(List<SelectedRow> shown) {
    FigureProvenance from = plain.provenance();
    return new FigureProvenance(
            from.series(),
            shown.isEmpty() ? "" : People.of(shown),
            from.model(),
            from.dataVersion(),
            from.dataDate(),
            shown.stream().anyMatch(row -> row.study().invented()))
        .citing(Cited.of(shown));
  }
}
