package gapwise.server.page.place;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.figure.value.Shown;
import gapwise.place.Course;
import gapwise.place.Stay;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A course of phases in words.
 *
 * @param lines the phases
 * @param total the whole in months and weeks
 * @param clocks where clocks start in it, first first
 */
public record CourseLines(List<Line> lines, String total, List<String> clocks) {
  /** Weeks in a month, as everywhere in the program: 30.44 days. */
  private static final double WEEKS_IN_MONTH = 30.44 / 7;

  /** One phase: what, how long as entered, from and to in months of the course. */
  public record Line(String phase, String lasted, String from, String to) {}

  public CourseLines {
    lines = List.copyOf(lines);
    clocks = List.copyOf(clocks);
  }

  static Optional<CourseLines> of(Course course) {
    if (course.stays().isEmpty()) {
      return Optional.empty();
    }
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < course.stays().size(); i++) {
      Stay stay = course.stays().get(i);
      lines.add(
          new Line(
              stay.phase().label(),
              plain(stay.duration().value()) + " " + stay.duration().unit().symbol(),
              Shown.months(course.monthsBefore(i)),
              Shown.months(course.monthsBefore(i + 1))));
    }
    double months = course.totalMonths();
    String total =
        say(
            "page.length-of-course",
            Map.of("months", Shown.months(months), "weeks", Math.round(months * WEEKS_IN_MONTH)));
    return Optional.of(new CourseLines(lines, total, clocks(course)));
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
  }

  private static List<String> clocks(Course course) {
    return course.origins().entrySet().stream()
        .sorted(
            Map.Entry.<Clock, Double>comparingByValue()
                .thenComparing(Map.Entry.comparingByKey(Comparator.naturalOrder())))
        .map(CourseLines::told)
        .toList();
  }

  private static String told(Map.Entry<? extends Coded, Double> origin) {
    String clock = origin.getKey().label();
    return origin.getValue() == 0
        ? say("page.clock-at-start", Map.of("clock", clock))
        : say(
            "page.clock-later", Map.of("clock", clock, "months", Shown.months(origin.getValue())));
  }
}
