package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.PublishedCurve;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.figure.FigureProvenance;
import gapwise.figure.curve.Curve;
import gapwise.figure.curve.CurveFigure;
import gapwise.figure.value.SeriesCount;
import gapwise.server.page.part.TwoWidths;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * One curve of a study, as it was read off a figure.
 *
 * @param outcome the time
 * @param group of whom it is
 * @param drawing the share with the event, in months
 * @param read how many points, and up to when
 * @param printed what the paper prints beside it
 * @param atRisk numbers at risk at their times; empty where none are printed
 * @param place where it stands in the paper
 * @param readings places on pages
 */
public record StudyCurves(
    String outcome,
    String group,
    TwoWidths drawing,
    String read,
    String printed,
    String atRisk,
    String place,
    List<ReadAt> readings) {
  public StudyCurves {
    readings = List.copyOf(readings);
  }

  /** Those of a study. */
  static List<StudyCurves> of(Study study) {
    return study.curves().stream().map(curve -> of(study, curve)).toList();
  }

  private static CurveFigure figure(Study study, PublishedCurve curve) {
    return new CurveFigure(
        curve.outcome().label(),
        List.of(),
        true,
        curve
            .outcome()
            .reached()
            .map(reached -> say("course.axis", Map.of("reached", reached)))
            .orElseGet(() -> say("answer.curves-with-event")),
        say("course.months"),
        List.of(drawn(name(study, curve), curve)),
        List.of(),
        new FigureProvenance(SeriesCount.of(1), "", "", "", Optional.empty(), study.invented()));
  }

  private static String name(Study study, PublishedCurve curve) {
    return study
        .arm(curve.arm())
        .map(arm -> arm.label().orElse(arm.method().principal().shortLabel()))
        .orElse(curve.arm());
  }

  private static Curve drawn(String name, PublishedCurve curve) {
    List<Curve.Step> steps = new ArrayList<>();
    double share = 1;
    for (PublishedCurve.Point point : curve.points()) {
      // A reading may turn back by its error; a share cannot.
      share = Math.min(share, curve.shows().without(point.share()) / 100);
      steps.add(new Curve.Step(months(curve, point.time()), share, Optional.empty()));
    }
    return new Curve(name, false, steps, months(curve, curve.lastTime()), seen(curve), List.of());
  }

  private static List<Double> seen(PublishedCurve curve) {
    return curve.lastSeen().stream().map(one -> months(curve, one.time())).toList();
  }

  private static double months(PublishedCurve curve, double time) {
    return curve.unit().to(Unit.MONTHS, time);
  }

  private static StudyCurves of(Study study, PublishedCurve curve) {
    return new StudyCurves(
        curve.outcome().label(),
        name(study, curve),
        TwoWidths.of(figure(study, curve)),
        say(
            "studies.curve-read",
            Map.of(
                "points",
                curve.points().size(),
                "end",
                number(curve.lastTime()),
                "unit",
                curve.unit().symbol(),
                "shows",
                curve.shows().label())),
        printed(curve),
        curve.atRisk().stream()
            .map(mark -> atRisk(mark, curve.unit().symbol()))
            .collect(Collectors.joining(", ")),
        curve.provenance().place().orElse(""),
        ReadAt.of(curve.provenance()));
  }

  private static String atRisk(PublishedCurve.AtRisk mark, String unit) {
    return say(
        "studies.curve-at-risk",
        Map.of("patients", mark.patients(), "time", number(mark.time()), "unit", unit));
  }

  private static String printed(PublishedCurve curve) {
    List<String> parts = new ArrayList<>();
    add(parts, "studies.curve-patients", curve.start());
    add(parts, "studies.curve-events", curve.totals().events());
    curve
        .totals()
        .median()
        .ifPresent(
            median ->
                parts.add(
                    say(
                        "studies.curve-median",
                        Map.of("median", number(median), "unit", curve.unit().symbol()))));
    return String.join(", ", parts);
  }

  private static void add(List<String> parts, String sentence, OptionalInt count) {
    if (count.isPresent()) {
      parts.add(say(sentence, Map.of("count", count.getAsInt())));
    }
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.1f", value).replaceFirst("\\.0$", "");
  }
}
