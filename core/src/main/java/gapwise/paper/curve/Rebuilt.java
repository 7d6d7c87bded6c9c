package gapwise.paper.curve;

import gapwise.paper.trace.DataPoint;
import gapwise.paper.trace.Steps;
import gapwise.synthesis.survival.CurveReconstruction;
import gapwise.synthesis.survival.DigitisedCurve;
import gapwise.synthesis.survival.KaplanMeier;
import gapwise.synthesis.survival.NumbersAtRisk;
import gapwise.synthesis.survival.NumbersAtRisk.Mark;
import gapwise.synthesis.survival.PatientTimes;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Times of patients put back together from a traced curve, and how they agree with what was traced
 * and printed.
 *
 * @param times of all patients
 * @param byMarks whether strokes for patients last seen told every time; otherwise those last seen
 *     are spread evenly between numbers at risk, as Guyot and others (2012) do
 * @param largestDifference between the rebuilt and the traced curve, as a share
 * @param meanDifference the same, on average over time
 * @param median of the rebuilt curve, if it falls to one half
 * @param sentences what a person should know, whole sentences
 */
public record Rebuilt(
    PatientTimes times,
    boolean byMarks,
    double largestDifference,
    double meanDifference,
    OptionalDouble median,
    List<String> sentences) {
  /** Times at which both curves are compared, besides all corners. */
  private static final int COMPARED = 500;

  /** A rebuilt curve further off than this is not the printed one; common practice, no source. */
  private static final double FAR = 0.03;

  /** Nobody reads a tenth of a percentage point off a figure. */
  private static final double UNREAD = 0.001;

  public Rebuilt {
    sentences = List.copyOf(sentences);
  }

  /** Rebuilds the times behind a curve. */
  public static Rebuilt of(Steps steps, Reported reported) {
    Optional<PatientTimes> marked =
        reported.seenLast().isEmpty() ? Optional.empty() : MarkedTimes.of(steps, reported);
    List<String> sentences = new ArrayList<>();
    PatientTimes times;
    if (marked.isPresent()) {
      times = marked.get();
      sentences.add(
          "Strokes on the curve tell when patients were last seen, and every drop and number at"
              + " risk agrees with them.");
    } else {
      CurveReconstruction.Reconstructed spread = spread(steps, reported);
      times = spread.times();
      sentences.add(
          reported.times().size() > 1
              ? "Patients last seen without the event are spread evenly between the numbers at"
                  + " risk, so their times are guesses."
              : "Without numbers at risk, when patients were last seen is a guess throughout.");
      for (Mark mark : spread.unreached()) {
        sentences.add(
            "The curve has fallen too far by the time "
                + shown(mark.time())
                + " to leave the "
                + mark.patients()
                + " patients that are printed at risk there. Check the number and the points.");
      }
    }
    return compared(steps, reported, times, marked.isPresent(), sentences);
  }

  /** The rebuilt curve to be drawn: its corners from the start to the last patient seen. */
  public List<DataPoint> outline() {
    List<DataPoint> corners = new ArrayList<>(List.of(new DataPoint(0, 1)));
    double height = 1;
    for (KaplanMeier.Step step : KaplanMeier.of(times).steps()) {
      corners.add(new DataPoint(step.time(), height));
      height = step.survival();
      corners.add(new DataPoint(step.time(), height));
    }
    corners.add(new DataPoint(times.longest(), height));
    return List.copyOf(corners);
  }

  private static CurveReconstruction.Reconstructed spread(Steps steps, Reported reported) {
    List<DigitisedCurve.Point> points = new ArrayList<>();
    for (DataPoint corner : steps.corners()) {
      points.add(new DigitisedCurve.Point(corner.x(), corner.y()));
    }
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < reported.times().size(); i++) {
      marks.add(new Mark(reported.times().get(i), reported.atRisk().get(i)));
    }
    return CurveReconstruction.of(
        DigitisedCurve.of(points), NumbersAtRisk.of(reported.patients(), marks), reported.events());
  }

  private static Rebuilt compared(
      Steps steps, Reported reported, PatientTimes times, boolean byMarks, List<String> sentences) {
    KaplanMeier curve = KaplanMeier.of(times);
    double end = Math.min(steps.end(), times.longest());
    double largest = 0;
    double sum = 0;
    for (int i = 0; i <= COMPARED; i++) {
      double time = end * i / COMPARED;
      double off = Math.abs(height(curve, time) - steps.at(time));
      largest = Math.max(largest, off);
      sum += off;
    }
    for (DataPoint corner : steps.corners()) {
      if (corner.x() <= end) {
        largest = Math.max(largest, Math.abs(height(curve, corner.x()) - corner.y()));
      }
    }
    OptionalDouble median =
        curve.steps().stream()
            .filter(s -> s.survival() <= 0.5 + 1e-9)
            .mapToDouble(KaplanMeier.Step::time)
            .findFirst();
    sentences.add(
        "The rebuilt curve is "
            + (largest < UNREAD
                ? "everywhere less than 0.1"
                : "at most "
                    + shown(100 * largest)
                    + " and on average "
                    + (sum / (COMPARED + 1) < UNREAD
                        ? "less than 0.1"
                        : shown(100 * sum / (COMPARED + 1))))
            + " percentage points from the traced one."
            + (largest > FAR ? " That is far. Check the points and the numbers at risk." : ""));
    told(reported, times, median, steps, sentences);
    return new Rebuilt(times, byMarks, largest, sum / (COMPARED + 1), median, sentences);
  }

  private static double height(KaplanMeier curve, double time) {
    double height = 1;
    for (KaplanMeier.Step step : curve.steps()) {
      if (step.time() > time) {
        break;
      }
      height = step.survival();
    }
    return height;
  }

  private static void told(
      Reported reported,
      PatientTimes times,
      OptionalDouble median,
      Steps steps,
      List<String> sentences) {
    if (reported.events().isPresent()) {
      int printed = reported.events().getAsInt();
      sentences.add(
          times.events() == printed
              ? "It has the " + printed + " events that the paper prints."
              : "It has "
                  + times.events()
                  + " events, but the paper prints "
                  + printed
                  + ". Check whether the paper counts the same event.");
    }
    if (reported.median().isPresent()) {
      double printed = reported.median().getAsDouble();
      double near = Math.max(0.02 * steps.end(), 0.051);
      if (median.isEmpty()) {
        sentences.add(
            "It never falls to one half, but the paper prints a median of "
                + shown(printed)
                + ". Check which curve the median belongs to.");
      } else {
        sentences.add(
            "Its median is "
                + shown(median.getAsDouble())
                + ", and the paper prints "
                + shown(printed)
                + (Math.abs(median.getAsDouble() - printed) <= near
                    ? "."
                    : ". That differs, so check the axis, the unit and the group."));
      }
    }
  }

  private static String shown(double value) {
    return String.format(Locale.ROOT, "%.3g", value)
        .replaceFirst("(\\.\\d*?)0+$", "$1")
        .replaceFirst("\\.$", "");
  }
}
