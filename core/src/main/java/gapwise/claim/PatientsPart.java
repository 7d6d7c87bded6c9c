package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.patients.PatientsAnswer;
import gapwise.analysis.patients.PatientsResult.Coefficient;
import gapwise.analysis.result.Result;
import gapwise.answer.Told;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import gapwise.numeric.ReferenceDistribution;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Separate series of both methods at one missing length, by the model that takes patients described
 * one by one and summaries of other series in one likelihood ({@code patients-with-summaries}). A
 * model is fitted to each method; where both tell the outcome at the length, the two are set
 * against each other. Studies that hold both methods are left out, so that the two models share no
 * patient.
 */
final class PatientsPart {
  private static final double LEVEL = 0.95;

  private final Runner runner;
  private final Claim claim;
  private final Effect effect;
  private final Quantity measure;
  private final List<ModelRows> sides;
  private final double length;

  /**
   * @param middle the length to tell both methods at, where the question asks for none
   */
  PatientsPart(Runner runner, Claim claim, Selection selection, double middle) {
    this.runner = runner;
    this.claim = claim;
    this.effect = Effect.of(selection.settled());
    this.measure = Told.measure(claim.outcome(), selection.rows());
    this.length = lengthAsked(selection).orElse(middle);
    Set<String> both = new HashSet<>(studies(selection, claim.a()));
    both.retainAll(studies(selection, claim.b()));
    this.sides =
        List.of(claim.a(), claim.b()).stream()
            .map(side -> ModelRows.of(selection, rows(selection, side, both), effect))
            .toList();
  }

  /** The middle of the lengths asked for, where both ends are. */
  private static Optional<Double> lengthAsked(Selection selection) {
    return selection
        .question()
        .among()
        .defect()
        .filter(range -> Double.isFinite(range.toCentimetres()) && range.fromCentimetres() > 0)
        .map(range -> (range.fromCentimetres() + range.toCentimetres()) / 2);
  }

  private static Set<String> studies(Selection selection, Claim.Side side) {
    return rows(selection, side, Set.of()).stream()
        .map(row -> row.study().id())
        .collect(Collectors.toSet());
  }

  private static List<SelectedRow> rows(
      Selection selection, Claim.Side side, Set<String> withoutStudies) {
    return selection.rows().stream()
        .filter(row -> row.arm().method().principal().equals(side.method()))
        .filter(row -> !withoutStudies.contains(row.study().id()))
        .toList();
  }

  /** One method at the length. */
  private record At(ObjectNode plan, Result result, Coefficient intercept) {
    PatientsAnswer answer() {
      return result.part(PatientsAnswer.class).orElseThrow();
    }

    int studies() {
      return answer().patients().studiesWithPatients()
          + answer().patients().studiesWithSummariesOnly();
    }
  }

  /** The comparison, then each method with its plan; none where no patient is described. */
  List<Part> all() {
    if (effect == Effect.RATE_RATIO || sides.stream().noneMatch(ModelRows::hasPatients)) {
      return List.of();
    }
    String heading = say("claim.by-patients");
    for (int i = 0; i < 2; i++) {
      if (sides.get(i).studies() < 2) {
        return List.of(
            Part.none(
                heading,
                say(
                    "claim.by-patients-too-few",
                    Map.of("method", side(i).name(), "series", sides.get(i).studies()))));
      }
    }
    Optional<At> first = at(0);
    Optional<At> second = at(1);
    return first.isPresent() && second.isPresent()
        ? List.of(
            compared(heading, first.get(), second.get()),
            own(claim.a(), first.get()),
            own(claim.b(), second.get()))
        : List.of(Part.none(heading, say("claim.by-patients-no-answer")));
  }

  private Claim.Side side(int place) {
    return place == 0 ? claim.a() : claim.b();
  }

  private Optional<At> at(int place) {
    String title =
        say(
            "claim.plan-by-patients",
            Map.of(
                "outcome", claim.outcome().label(),
                "method", side(place).name(),
                "length", Shown.centimetres(length)));
    ObjectNode plan = sides.get(place).plan(title, length);
    if (!(runner.run(plan, Optional.empty()) instanceof PlanOutcome.Done done)) {
      return Optional.empty();
    }
    return done.result().part(PatientsAnswer.class).stream()
        .flatMap(answer -> answer.patients().coefficients().stream())
        .filter(one -> one.term().equals("intercept"))
        .findFirst()
        .map(intercept -> new At(plan, done.result(), intercept));
  }

  private Part compared(String heading, At first, At second) {
    double difference = first.intercept().estimate() - second.intercept().estimate();
    // The two models share no study, so that their errors add up as squares.
    double error =
        Math.hypot(first.intercept().standardError(), second.intercept().standardError());
    // The fewer degrees of freedom of both: never narrower than the methods by themselves.
    int degrees =
        Math.min(first.intercept().degreesOfFreedom(), second.intercept().degreesOfFreedom());
    double half = ReferenceDistribution.studentT(degrees).multiplier(LEVEL) * error;
    Compared compared =
        new Compared(
            effect,
            claim.outcome(),
            first.studies() + second.studies(),
            sides.get(0).people() + sides.get(1).people(),
            effect.shown(difference),
            effect.shown(difference - half),
            effect.shown(difference + half),
            Optional.empty());
    List<String> sentences = new ArrayList<>();
    sentences.add(
        say(
            "claim.by-patients-compared",
            Map.of(
                "length", Shown.centimetres(length),
                "told", compared.words(claim),
                "patients",
                    first.answer().patients().patients() + second.answer().patients().patients(),
                "series", compared.studies())));
    for (int i = 0; i < 2; i++) {
      if (!sides.get(i).reaches(length)) {
        sentences.add(
            say(
                "claim.by-patients-outside",
                Map.of("length", Shown.centimetres(length), "method", side(i).name())));
      }
    }
    sentences.add(say("claim.by-patients-caution"));
    return new Part(heading, sentences, Optional.of(compared), Optional.empty(), Optional.empty());
  }

  private Part own(Claim.Side side, At at) {
    Coefficient told = at.intercept();
    Estimate value = Estimate.of(read(told.estimate()), read(told.lower()), read(told.upper()));
    return new Part(
        say(
            "claim.by-patients-own",
            Map.of("method", side.name(), "length", Shown.centimetres(length))),
        List.of(
            say(
                "claim.by-patients-says",
                Map.of(
                    "value", Amount.of(measure, value.value()),
                    "limits",
                        Shown.limits(measure, new Limits(read(told.lower()), read(told.upper()))),
                    "patients", at.answer().patients().patients(),
                    "described", at.answer().patients().studiesWithPatients(),
                    "summed", at.answer().patients().studiesWithSummariesOnly()))),
        Optional.empty(),
        Optional.of(at.plan()),
        Optional.of(at.result()));
  }

  /** From the scale of the model to what people read. */
  private double read(double value) {
    return switch (effect) {
      case ODDS_RATIO -> 1 / (1 + Math.exp(-value));
      case RATIO_OF_MEANS -> Math.exp(value);
      case MEAN_DIFFERENCE, RATE_RATIO -> value;
    };
  }
}
