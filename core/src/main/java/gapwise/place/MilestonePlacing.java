package gapwise.place;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.QuestionPlan;
import gapwise.analysis.moderators.RegressionResult;
import gapwise.analysis.pooling.PlaceResult;
import gapwise.analysis.result.Result;
import gapwise.analysis.subgroups.SubgroupsResult;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.answer.Answers;
import gapwise.answer.People;
import gapwise.answer.PooledValue;
import gapwise.answer.QuestionWords;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.place.MethodPlace.ByLength;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import gapwise.selection.RowsByArm;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** One milestone of a case held against the series on the same clock. Used once. */
final class MilestonePlacing {
  /** The column of the evidence base's rows with the mean or median length in centimetres. */
  private static final String LENGTH = "defectLengthCentimetres";

  private final Answers answers;
  private final PatientCase patientCase;
  private final Reached reached;
  private final List<ObjectNode> plans = new ArrayList<>();

  MilestonePlacing(Answers answers, PatientCase patientCase, Reached reached) {
    this.answers = answers;
    this.patientCase = patientCase;
    this.reached = reached;
  }

  PlacedMilestone placed() {
    Question question = question(SearchRequest.EVERYTHING);
    Selection selection = answers.select(question).byMethod();
    Optional<String> barred = EvidenceNotes.barred(reached, selection);
    if (barred.isPresent()) {
      return new PlacedMilestone(
          reached, List.of(), List.of(barred.get()), selection, List.of(), Optional.empty());
    }
    Optional<Result> result = done(Answers.run(selection, noted(withPlaces(question, true))));
    List<MethodPlace> methods = new ArrayList<>();
    result.ifPresent(
        pooled -> {
          for (Method method : inOrder()) {
            of(method, selection, pooled).ifPresent(methods::add);
          }
        });
    return new PlacedMilestone(
        reached,
        methods,
        EvidenceNotes.beside(reached, selection, methods),
        selection,
        plans,
        result.map(pooled -> pooled.data().sha256()));
  }

  private Question question(SearchRequest among) {
    return new Question(
        reached.milestone().outcome(), among, reached.clock(), Question.USUAL_MINIMUM_PATIENTS);
  }

  private ObjectNode withPlaces(Question question, boolean byMethod) {
    ObjectNode plan =
        QuestionPlan.of(question, QuestionWords.of(question), byMethod)
            .orElseThrow(() -> new IllegalStateException("no plan for " + question.outcome()));
    plan.putArray("places").add(reached.value());
    return plan;
  }

  private ObjectNode noted(ObjectNode plan) {
    plans.add(plan);
    return plan;
  }

  private static Optional<Result> done(PlanOutcome outcome) {
    return outcome instanceof PlanOutcome.Done done ? Optional.of(done.result()) : Optional.empty();
  }

  private List<Method> inOrder() {
    List<Method> order = new ArrayList<>(patientCase.method().stream().toList());
    Method.vocabulary().all().stream().filter(one -> !order.contains(one)).forEach(order::add);
    return order;
  }

  private Optional<MethodPlace> of(Method method, Selection selection, Result result) {
    List<SelectedRow> rows = rows(method, selection, result, true);
    Optional<SubgroupsResult.Subgroup> group = SynthesisResult.of(result).group(method.code());
    if (rows.isEmpty() || group.isEmpty()) {
      return Optional.empty();
    }
    PlaceResult place = group.get().places().orElseThrow().get(0);
    return Optional.of(
        new MethodPlace(
            method,
            patientCase.method().equals(Optional.of(method)),
            rows.size(),
            People.of(rows),
            place.newStudiesBelow(),
            place.studiesBelow().orElse(0),
            byLength(method, rows),
            EvidenceNotes.patients(reached, rows),
            EvidenceNotes.unpooled(reached, rows(method, selection, result, false)),
            group.get().summary().flatMap(MilestonePlacing::average),
            newCentre(group.get(), rows.size()),
            EvidenceNotes.like(patientCase, rows)));
  }

  private static List<SelectedRow> rows(
      Method method, Selection selection, Result result, boolean pooled) {
    List<Result.Study> studies = SynthesisResult.of(result).studies();
    RowsByArm selected = RowsByArm.of(selection);
    return studies.stream()
        .filter(study -> study.weightPercent().isPresent() == pooled)
        .flatMap(study -> selected.row(study.studyId(), study.armId()).stream())
        .filter(row -> row.arm().method().principal().equals(method))
        .toList();
  }

  private static Optional<Limits> newCentre(SubgroupsResult.Subgroup group, int rows) {
    return group
        .summary()
        .map(Result.Summary::shown)
        .flatMap(
            shown ->
                group.bayesian().isPresent()
                    ? PooledValue.newCentreByPosterior(shown, rows)
                    : PooledValue.newCentre(shown, rows));
  }

  /** Empty where limits are too far apart for a number, as two series can have them. */
  private static Optional<Estimate> average(Result.Summary summary) {
    Result.Shown shown = summary.shown();
    return Double.isFinite(shown.lower()) && Double.isFinite(shown.upper())
        ? Optional.of(PooledValue.average(shown))
        : Optional.empty();
  }

  private ByLength byLength(Method method, List<SelectedRow> rows) {
    OptionalDouble length = patientCase.defectLengthCentimetres();
    if (length.isEmpty()) {
      return new ByLength.NotAdjusted(say("place.no-length"));
    }
    int known = (int) rows.stream().filter(row -> centre(row).isPresent()).count();
    if (known < MethodPlace.FEWEST_WITH_LENGTH) {
      return new ByLength.NotAdjusted(CaseWords.tooFewLengths(known, rows.size()));
    }
    Optional<RegressionResult.Prediction> at =
        done(answers
                .runner()
                .run(noted(alongLength(method, length.getAsDouble())), Optional.empty()))
            .flatMap(result -> SynthesisResult.of(result).regression())
            .flatMap(RegressionResult::predictions)
            .map(all -> all.get(0));
    if (at.isEmpty()) {
      return new ByLength.NotAdjusted(say("place.no-line"));
    }
    if (at.get().outsideData()) {
      return new ByLength.NotAdjusted(
          CaseWords.outsideLengths(length.getAsDouble(), lengths(rows)));
    }
    OptionalDouble below = at.get().places().orElseThrow().get(0).newStudiesBelow();
    return below.isPresent()
        ? new ByLength.Adjusted(below.getAsDouble(), known)
        : new ByLength.NotAdjusted(CaseWords.tooFewLengths(known, rows.size()));
  }

  private ObjectNode alongLength(Method method, double centimetres) {
    SearchRequest ofMethod = SearchRequest.EVERYTHING.withMethods(Set.of(method.code()));
    Question question = question(ofMethod);
    ObjectNode plan = withPlaces(question, false);
    plan.put(
        "title",
        say(
            "place.at-length",
            Map.of(
                "question", QuestionWords.of(question),
                "length", CaseWords.number(centimetres))));
    QuestionPlan.byEffects(plan);
    ArrayNode moderators = plan.putArray("moderators");
    moderators.add(LENGTH);
    plan.putArray("predictions").addObject().put(LENGTH, centimetres);
    return plan;
  }

  private static OptionalDouble centre(SelectedRow row) {
    return row.defect()
        .map(defect -> defect.length().centreCentimetres())
        .orElse(OptionalDouble.empty());
  }

  private static List<Double> lengths(List<SelectedRow> rows) {
    return rows.stream()
        .map(MilestonePlacing::centre)
        .filter(OptionalDouble::isPresent)
        .map(OptionalDouble::getAsDouble)
        .sorted()
        .toList();
  }
}
