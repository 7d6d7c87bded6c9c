package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.QuestionPlan;
import gapwise.analysis.Runner;
import gapwise.analysis.moderators.RegressionResult;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.answer.PooledValue;
import gapwise.answer.QuestionWords;
import gapwise.answer.Told;
import gapwise.evidence.ArmInfection;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import gapwise.problem.Problem;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;

/** Separate series of both methods set against each other, with allowance for what differs. */
final class AdjustedPart {
  /** Fewer series a moderator make no line that a new series would leave in place. */
  static final int SERIES_PER_MODERATOR = 10;

  private static final String LENGTH = "defectLengthCentimetres";
  private static final String INFECTED = "infectedShare";

  private final Runner runner;
  private final Claim claim;
  private final Selection selection;
  private final Effect effect;

  AdjustedPart(Runner runner, Claim claim, Selection selection) {
    this.runner = runner;
    this.claim = claim;
    this.selection = selection;
    this.effect = Effect.of(selection.settled());
  }

  /**
   * Without allowance, with length, with length and infection; then by patients described one by
   * one together with the series, where there are such patients.
   */
  List<Part> all() {
    List<Part> parts = new ArrayList<>();
    parts.add(part(say("claim.adjusted-for-nothing"), List.of()));
    parts.add(part(say("claim.adjusted-for-length"), List.of(LENGTH)));
    parts.add(part(say("claim.adjusted-for-infection"), List.of(LENGTH, INFECTED)));
    parts.addAll(byPatients());
    return parts;
  }

  /** By patients together with series; empty where that gives no comparison. */
  Optional<Part> patientsCompared() {
    return byPatients().stream().filter(part -> part.compared().isPresent()).findFirst();
  }

  private List<Part> byPatients() {
    return selection.rows().stream().allMatch(row -> length(row).isEmpty())
        ? List.of()
        : new PatientsPart(runner, claim, selection, middleLength()).all();
  }

  /** With allowance for as much as can be; empty where nothing can be allowed for. */
  Optional<Part> fullest() {
    Part both = part(say("claim.adjusted-for-infection"), List.of(LENGTH, INFECTED));
    if (both.compared().isPresent()) {
      return Optional.of(both);
    }
    return Optional.of(part(say("claim.adjusted-for-length"), List.of(LENGTH)))
        .filter(part -> part.compared().isPresent());
  }

  private Part part(String heading, List<String> moderators) {
    int needed = SERIES_PER_MODERATOR * (moderators.size() + 1);
    Predicate<SelectedRow> tells =
        row ->
            (!moderators.contains(LENGTH) || length(row).isPresent())
                && (!moderators.contains(INFECTED) || infected(row));
    long usable = selection.rows().stream().filter(tells).count();
    if (usable < needed) {
      return Part.none(heading, tooFew(usable, needed));
    }
    Optional<ObjectNode> plan = plan(moderators);
    if (plan.isEmpty()) {
      return Part.none(heading, say("claim.not-pooled"));
    }
    Part part = run(heading, plan.get(), needed);
    return part.compared().isPresent()
        ? part
        : QuestionPlan.moderatedByEffects(plan.get())
            .map(other -> run(heading, other, needed))
            .filter(other -> other.compared().isPresent())
            .orElse(part);
  }

  private Part run(String heading, ObjectNode plan, int needed) {
    PlanOutcome outcome = runner.run(plan, Optional.empty());
    if (outcome instanceof PlanOutcome.Wrong wrong) {
      return Part.none(
          heading,
          say(
              "claim.not-worked-out",
              Map.of(
                  "problem",
                  wrong.problems().stream().map(Problem::message).findFirst().orElse(""))));
    }
    return told(heading, plan, ((PlanOutcome.Done) outcome).result(), needed);
  }

  private static String tooFew(long usable, int needed) {
    return say("claim.too-few-series", Map.of("series", usable, "needed", needed));
  }

  private Optional<ObjectNode> plan(List<String> moderators) {
    Optional<ObjectNode> plan =
        QuestionPlan.of(
            selection,
            say("claim.plan-adjusted", Map.of("question", QuestionWords.of(selection.question()))),
            false);
    plan.ifPresent(
        json -> {
          QuestionPlan.forModerators(json);
          ArrayNode terms = json.putArray("moderators");
          terms.addObject().put("column", "method").put("reference", claim.b().method().code());
          moderators.forEach(terms::add);
          ArrayNode predictions = json.putArray("predictions");
          for (Claim.Side side : List.of(claim.a(), claim.b())) {
            ObjectNode at = predictions.addObject().put("method", side.method().code());
            if (moderators.contains(LENGTH)) {
              at.put(LENGTH, middleLength());
            }
            if (moderators.contains(INFECTED)) {
              at.put(INFECTED, 0.5);
            }
          }
        });
    return plan;
  }

  private Part told(String heading, ObjectNode plan, Result result, int needed) {
    long entered =
        SynthesisResult.of(result).studies().stream()
            .filter(s -> s.weightPercent().isPresent())
            .count();
    if (entered < needed && SynthesisResult.of(result).regression().isPresent()) {
      return Part.none(heading, tooFew(entered, needed));
    }
    Optional<RegressionResult.Coefficient> method =
        SynthesisResult.of(result).regression().stream()
            .flatMap(regression -> regression.coefficients().stream())
            .filter(one -> one.term().equals("method=" + claim.a().method().code()))
            .findFirst();
    if (method.isEmpty()) {
      return new Part(
          heading,
          List.of(say("claim.not-told-apart")),
          Optional.empty(),
          Optional.of(plan),
          Optional.of(result));
    }
    Compared compared =
        new Compared(
            effect,
            claim.outcome(),
            (int) entered,
            Math.round(result.data().participants().orElseGet(this::patients)),
            effect.shown(method.get().estimate()),
            effect.shown(method.get().lower()),
            effect.shown(method.get().upper()),
            Optional.empty());
    List<String> sentences = new ArrayList<>();
    sentences.add(say("claim.adjusted", Map.of("series", entered, "told", compared.words(claim))));
    sentences.addAll(predicted(result));
    overlap(plan).ifPresent(sentences::add);
    if (result.warnings().stream().anyMatch(one -> one.code().equals("zero-cells-corrected"))) {
      sentences.add(say("claim.half-events"));
    }
    return new Part(
        heading, sentences, Optional.of(compared), Optional.of(plan), Optional.of(result));
  }

  /** Of all series; rates are pooled over patients as a time at risk and not as participants. */
  private double patients() {
    return selection.rows().stream().mapToInt(row -> row.speaksOf().orElse(0)).sum();
  }

  private List<String> predicted(Result result) {
    List<RegressionResult.Prediction> both =
        SynthesisResult.of(result)
            .regression()
            .flatMap(RegressionResult::predictions)
            .orElse(List.of());
    if (both.size() != 2) {
      return List.of();
    }
    boolean atLength = both.get(0).at().containsKey(LENGTH);
    boolean atInfected = both.get(0).at().containsKey(INFECTED);
    Map<String, String> values = new HashMap<>();
    values.put("first", claim.a().name());
    values.put("second", claim.b().name());
    values.put("ofFirst", average(both.get(0)));
    values.put("ofSecond", average(both.get(1)));
    if (atLength) {
      values.put("length", Shown.centimetres(middleLength()));
    }
    String words =
        atLength
            ? say(atInfected ? "claim.line-gives-at-half-infected" : "claim.line-gives", values)
            : say("claim.model-gives", values);
    boolean outside = both.stream().anyMatch(RegressionResult.Prediction::outsideData);
    return outside ? List.of(words, say("claim.outside-data")) : List.of(words);
  }

  private String average(RegressionResult.Prediction prediction) {
    Estimate average = PooledValue.average(prediction.shown());
    Quantity measure = Told.measure(claim.outcome(), selection.rows());
    return say(
        "claim.value-with-limits",
        Map.of(
            "value",
            Amount.of(measure, average.value()),
            "limits",
            Shown.limits(measure, average.limits())));
  }

  /** Where the lengths of one method have no counterpart in the other. */
  private Optional<String> overlap(ObjectNode plan) {
    if (!plan.path("moderators").toString().contains(LENGTH)) {
      return Optional.empty();
    }
    return Optional.of(
        say(
            "claim.lengths",
            Map.of(
                "first",
                claim.a().name(),
                "ofFirst",
                reach(claim.a().method()),
                "second",
                claim.b().name(),
                "ofSecond",
                reach(claim.b().method()))));
  }

  private String reach(Method method) {
    List<Double> lengths =
        selection.rows().stream()
            .filter(row -> row.arm().method().principal().equals(method))
            .map(AdjustedPart::length)
            .filter(OptionalDouble::isPresent)
            .map(OptionalDouble::getAsDouble)
            .sorted()
            .toList();
    return lengths.isEmpty()
        ? say("claim.lengths-unknown")
        : say(
            "claim.lengths-from-to",
            Map.of(
                "from",
                Shown.centimetres(lengths.get(0)),
                "to",
                Shown.centimetres(lengths.get(lengths.size() - 1))));
  }

  /** The middle of the lengths of all series, at which both methods are told. */
  private double middleLength() {
    List<Double> lengths =
        selection.rows().stream()
            .map(AdjustedPart::length)
            .filter(OptionalDouble::isPresent)
            .map(OptionalDouble::getAsDouble)
            .sorted()
            .toList();
    return lengths.get(lengths.size() / 2);
  }

  private static OptionalDouble length(SelectedRow row) {
    return row.defect()
        .map(defect -> defect.length().centreCentimetres())
        .orElse(OptionalDouble.empty());
  }

  private static boolean infected(SelectedRow row) {
    return ArmInfection.of(row.study(), row.arm()).share().isPresent();
  }
}
