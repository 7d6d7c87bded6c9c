package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.PublishedCurve;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.FigureProvenance;
import gapwise.figure.curve.Curve;
import gapwise.figure.curve.CurveFigure;
import gapwise.figure.value.SeriesCount;
import gapwise.server.page.part.TwoWidths;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * The curves of a study for one time, as they were read off its figures.
 *
 * @param outcome the time
 * @param drawing all of them in one field, in months, as the share with the event
 * @param lines one a curve
 */
public record StudyCurves(String outcome, TwoWidths drawing, List<Line> lines) {
  public StudyCurves {
    lines = List.copyOf(lines);
  }

  /**
   * One curve.
   *
   * @param group of whom it is
   * @param read how many points, and up to when
   * @param printed what the paper prints beside it
   * @param atRisk numbers at risk at their times
   * @param place where it stands
   * @param readings places on pages
   */
  public record Line(
      String group,
      String read,
      String printed,
      String atRisk,
      String place,
      List<ReadAt> readings) {}

  /** Those of a study, one for each time. */
  static List<StudyCurves> of(Study study) {
    Map<Outcome, List<PublishedCurve>> byOutcome =
        study.curves().stream()
            .collect(
                Collectors.groupingBy(
                    PublishedCurve::outcome, LinkedHashMap::new, Collectors.toList()));
    return byOutcome.entrySet().stream()
        .map(
            one ->
                new StudyCurves(
                    one.getKey().label(),
                    TwoWidths.of(figure(study, one.getKey(), one.getValue())),
                    one.getValue().stream().map(curve -> line(study, curve)).toList()))
        .toList();
  }

  private static CurveFigure figure(Study study, Outcome outcome, List<PublishedCurve> curves) {
    return new CurveFigure(
        outcome.label(),
        List.of(),
        true,
        say("course.axis"),
        say("course.months"),
        curves.stream()
            .limit(CurveFigure.MOST_CURVES)
            .map(curve -> drawn(name(study, curve), curve))
            .toList(),
        List.of(),
        new FigureProvenance(
            SeriesCount.of(curves.size()), "", "", "", Optional.empty(), study.invented()));
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
    return new Curve(
        name, false, steps, months(curve, curve.lastTime()), seen(curve), List.of());
  }

  private static List<Double> seen(PublishedCurve curve) {
    return curve.lastSeen().stream().map(one -> months(curve, one.time())).toList();
  }

  private static double months(PublishedCurve curve, double time) {
    return curve.unit().to(Unit.MONTHS, time);
  }

  private static Line line(Study study, PublishedCurve curve) {
    return new Line(
        name(study, curve),
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
            .map(mark -> mark.patients() + " at " + number(mark.time()))
            .collect(Collectors.joining(", ")),
        curve.provenance().place().orElse(""),
        ReadAt.of(curve.provenance()));
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
