package gapwise.server.page.figure;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.CurveOf;
import gapwise.desk.Draft;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.exchange.Template;
import gapwise.paper.curve.Reported;
import gapwise.paper.trace.DataPoint;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** What a curve is of, out of what is typed, or what is wrong with it. */
final class TypedCurve {
  /** Papers print a number at risk at some ten times. */
  private static final int MOST_AT_RISK = 100;

  /** Far more than any curve of this trade starts with; each is a time of a patient in memory. */
  private static final int MOST_PATIENTS = 20_000;

  private static final int MOST_STROKES = 2_000;
  private static final int MOST_LETTERS = 200;

  private TypedCurve() {}

  /** The units that times of curves are printed in. */
  static List<Unit> units() {
    return List.of(Unit.DAYS, Unit.WEEKS, Unit.MONTHS, Unit.YEARS);
  }

  /** What a curve may show. */
  static List<Outcome> outcomes() {
    return Outcome.vocabulary().all().stream()
        .filter(outcome -> outcome.kind() == Outcome.Kind.TIME)
        .toList();
  }

  static Optional<CurveOf> of(FigureFields fields, Draft draft, Problems problems) {
    int before = problems.size();
    String arm = arm(fields, draft, problems);
    if (outcomes().stream().noneMatch(outcome -> fields.is("outcome", outcome.code()))) {
      problems.add("outcome", "outcome-missing", say("figure.outcome-missing"));
    }
    if (units().stream().noneMatch(unit -> fields.is("unit", unit.symbol()))) {
      problems.add("unit", "unit-missing", say("figure.unit-missing"));
    }
    Optional<Reported> reported = reported(fields, problems);
    Optional<String> place = place(fields, problems);
    return problems.size() > before
        ? Optional.empty()
        : reported.map(
            printed ->
                new CurveOf(
                    arm,
                    fields.text("outcome"),
                    fields.text("unit"),
                    fields.is("shows", "with-event"),
                    printed,
                    place));
  }

  static String arm(FigureFields fields, Draft draft, Problems problems) {
    String arm = fields.text("arm");
    if (draft.rows(Template.ARMS).stream().noneMatch(row -> row.text(Template.ARM).equals(arm))) {
      problems.add("arm", "arm-missing", say("figure.arm-missing"));
    }
    return arm;
  }

  /** The group that a figure names; empty text where the draft has none of this name. */
  static String named(Draft draft, String label) {
    return draft.rows(Template.ARMS).stream()
        .filter(
            row ->
                row.text("label").equalsIgnoreCase(label)
                    || row.text(Template.ARM).equalsIgnoreCase(label))
        .map(row -> row.text(Template.ARM))
        .findFirst()
        .orElse("");
  }

  static Optional<String> place(FigureFields fields, Problems problems) {
    String place = fields.text("place");
    if (place.length() > MOST_LETTERS) {
      problems.add(
          "place", "text-too-long", say("desk.too-long", Map.of("letters", place.length())));
    }
    return Optional.of(place).filter(text -> !text.isEmpty());
  }

  private static Optional<Reported> reported(FigureFields fields, Problems problems) {
    int before = problems.size();
    OptionalInt patients =
        TypedNumbers.whole(
            "patients", fields.text("patients"), say("figure.what-patients"), problems);
    OptionalInt events =
        TypedNumbers.whole("events", fields.text("events"), say("figure.what-events"), problems);
    OptionalDouble median =
        TypedNumbers.number("median", fields.text("median"), say("figure.what-median"), problems);
    if (median.isPresent() && median.getAsDouble() < 0) {
      problems.add("median", "below-zero", say("figure.median-below-zero"));
    }
    List<DataPoint> risk =
        TypedNumbers.pairs("risk", fields.text("risk"), MOST_AT_RISK, problems).stream()
            .sorted(Comparator.comparingDouble(DataPoint::x))
            .toList();
    if (risk.stream().anyMatch(one -> one.y() != Math.rint(one.y()) || one.y() > MOST_PATIENTS)) {
      problems.add(
          "risk",
          "not-a-whole-number",
          say("figure.risk-not-whole", Map.of("most", MOST_PATIENTS)));
    }
    List<Double> strokes =
        TypedNumbers.list("strokes", fields.text("strokes"), MOST_STROKES, problems);
    if (strokes.stream().anyMatch(time -> time < 0)) {
      problems.add("strokes", "below-zero", say("figure.stroke-below-zero"));
    }
    if (fields.text("patients").isEmpty()
        || patients.isPresent() && patients.getAsInt() > MOST_PATIENTS) {
      problems.add(
          "patients",
          "patients-missing",
          say("figure.patients-missing", Map.of("most", MOST_PATIENTS)));
    }
    if (patients.isEmpty() || problems.size() > before) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new Reported(
              patients.getAsInt(),
              risk.stream().map(DataPoint::x).toList(),
              risk.stream().map(one -> (int) one.y()).toList(),
              strokes,
              events,
              median));
    } catch (WrongInputException wrong) {
      problems.addAll(wrong.problems());
      return Optional.empty();
    }
  }
}
