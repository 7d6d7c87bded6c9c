package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.answer.AnswerForest;
import gapwise.answer.Cited;
import gapwise.answer.Edition;
import gapwise.answer.People;
import gapwise.answer.PlainForest;
import gapwise.answer.StudyAddress;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.forest.Block;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.ForestRow;
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
  public static Optional<Forest> of(Verdict.Examined examined, Edition edition) {
    return examined
        .direct()
        .result()
        .map(
            result ->
                new ClaimForest(examined, PlainForest.of(result, edition))
                    .forest(examined.direct(), drawn(result)))
        .filter(forest -> !forest.blocks().get(0).rows().isEmpty());
  }

  /** The studies that have a row in the plain figure, in its order. */
  private static List<Result.Study> drawn(Result result) {
    return SynthesisResult.of(result).studies().stream()
        .filter(study -> study.shown().isPresent())
        .toList();
  }

  private Forest forest(Part direct, List<Result.Study> studies) {
    List<SelectedRow> shown = new ArrayList<>();
    List<ForestRow> told = new ArrayList<>();
    Block block = plain.blocks().get(0);
    for (int at = 0; at < studies.size(); at++) {
      Optional<SelectedRow> first = side(studies.get(at), claim.a().method());
      Optional<SelectedRow> second = side(studies.get(at), claim.b().method());
      Stream.of(first, second).flatMap(Optional::stream).forEach(shown::add);
      told.add(
          first.isPresent() && second.isPresent()
              ? row(block.rows().get(at), first.get(), second.get())
              : block.rows().get(at));
    }
    return new Forest(
        new Heading(
            plain.heading().title(),
            direct.sentences().subList(0, 1),
            "",
            plain.heading().values()),
        plain.measure(),
        axis(),
        List.of(new Block("", told, block.summary())),
        Optional.empty(),
        List.of(),
        notes(),
        AnswerForest.CAUTIONS,
        provenance(shown));
  }

  private Optional<SelectedRow> side(Result.Study study, Method method) {
    return rows.stream()
        .filter(row -> study.studyId().filter(row.study().id()::equals).isPresent())
        .filter(row -> row.arm().method().principal().equals(method))
        .findFirst();
  }

  private static ForestRow row(ForestRow plain, SelectedRow first, SelectedRow second) {
    List<String> detail = new ArrayList<>();
    detail.add(say("claim.figure-counts", Map.of("one", counted(first), "other", counted(second))));
    first.study().design().map(Design::label).ifPresent(detail::add);
    detail.add(say("claim.figure-lengths", Map.of("one", length(first), "other", length(second))));
    return new ForestRow(
        plain.study(),
        String.join(", ", detail),
        Defects.span(first.defect()),
        "",
        plain.estimate(),
        plain.weightPercent(),
        plain.openEnd(),
        Optional.of(StudyAddress.of(first.study().id())),
        first.study().citation().line());
  }

  private static String counted(SelectedRow row) {
    return row.value() instanceof ReportedValue.Events events && events.count().isComplete()
        ? Values.ofTotal(
            events.count().events().orElseThrow(), events.count().total().orElseThrow())
        : People.of(List.of(row));
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
