package gapwise.server.page.course;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.StudyAddress;
import gapwise.course.CourseAnswer;
import gapwise.course.CourseTold;
import gapwise.course.CurveTaken;
import gapwise.course.MethodCourse;
import gapwise.course.ShareBy;
import gapwise.course.WithinMonths;
import gapwise.evidence.PublishedCurve;
import gapwise.evidence.unit.Unit;
import gapwise.figure.value.Limits;
import gapwise.selection.LeftOut;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The table of an event over time, and what was left out of it. */
final class CourseLines {
  /** A page names so many one by one (our choice). */
  private static final int MOST_NAMED = 50;

  private CourseLines() {}

  static List<CourseView.Line> of(CourseAnswer answer, Address address) {
    return answer.methods().stream().map(method -> line(method, answer, address)).toList();
  }

  private static CourseView.Line line(MethodCourse method, CourseAnswer answer, Address address) {
    return new CourseView.Line(
        method.method().shortLabel(),
        method.method().code(),
        say(
            "page.course-counted",
            Map.of(
                "curves", method.curves().size(),
                "studies", method.studies(),
                "patients", method.patients())),
        CourseTold.MONTHS.stream().map(month -> by(method, month)).toList(),
        mean(method, answer.horizon()),
        address.with("method", method.method().code()).at(PagePaths.OVER_TIME),
        method.curves().stream().map(CourseLines::source).toList());
  }

  private static CourseView.Cell by(MethodCourse method, int month) {
    String head = say("page.course-by", Map.of("month", month));
    return method
        .by(month)
        .map(by -> new CourseView.Cell(head, share(by), rests(by)))
        .orElseGet(() -> new CourseView.Cell(head, say("page.course-not-so-far"), ""));
  }

  private static String share(ShareBy by) {
    String share = CourseTold.hundredths(by.share());
    return by.limits()
        .map(
            limits ->
                say(
                    "page.course-share",
                    Map.of(
                        "share",
                        share,
                        "lower",
                        CourseTold.hundredths(limits.lower()),
                        "upper",
                        CourseTold.hundredths(limits.upper()))))
        .orElseGet(() -> say("page.course-share-bare", Map.of("share", share)));
  }

  private static String rests(ShareBy by) {
    return say("page.course-rests", Map.of("curves", by.curves(), "patients", by.atRisk()));
  }

  private static CourseView.Cell mean(MethodCourse method, int horizon) {
    String head = say("page.course-within", Map.of("months", horizon));
    return method
        .restrictedMean()
        .map(mean -> new CourseView.Cell(head, months(mean), of(mean)))
        .orElseGet(() -> new CourseView.Cell(head, say("page.course-no-mean"), ""));
  }

  private static String months(WithinMonths mean) {
    String value = tenths(mean.months());
    Optional<Limits> limits = mean.limits();
    return limits.isEmpty()
        ? value
        : say(
            "page.course-mean",
            Map.of(
                "months",
                value,
                "lower",
                tenths(limits.get().lower()),
                "upper",
                tenths(limits.get().upper())));
  }

  private static String of(WithinMonths mean) {
    return say("page.course-mean-of", Map.of("curves", mean.curves()));
  }

  private static String tenths(double months) {
    return String.format(Locale.ROOT, "%.1f", months);
  }

  private static CourseView.Source source(CurveTaken taken) {
    PublishedCurve curve = taken.curve();
    return new CourseView.Source(
        taken.label(),
        StudyAddress.of(taken.row().study().id()) + "#curves",
        say(
            "page.course-source",
            Map.of(
                "patients",
                taken.patients(),
                "end",
                tenths(curve.unit().to(Unit.MONTHS, curve.lastTime())),
                "place",
                curve.provenance().place().orElseGet(() -> say("page.course-no-place")))));
  }

  static List<CourseView.Reason> leftOut(CourseAnswer answer) {
    Map<String, List<LeftOut>> byReason =
        answer.leftOut().stream()
            .collect(
                Collectors.groupingBy(LeftOut::message, LinkedHashMap::new, Collectors.toList()));
    return byReason.entrySet().stream()
        .map(
            reason ->
                new CourseView.Reason(
                    reason.getKey(),
                    reason.getValue().stream().limit(MOST_NAMED).toList(),
                    more(reason.getValue().size())))
        .toList();
  }

  private static Optional<String> more(int groups) {
    return groups <= MOST_NAMED
        ? Optional.empty()
        : Optional.of(say("page.course-and-more", Map.of("more", groups - MOST_NAMED)));
  }
}
