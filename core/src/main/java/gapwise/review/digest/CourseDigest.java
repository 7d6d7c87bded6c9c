package gapwise.review.digest;

import static gapwise.sentence.Sentences.say;

import gapwise.course.CourseAnswer;
import gapwise.course.CourseTold;
import gapwise.course.CurveTaken;
import gapwise.course.MethodCourse;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Shown;
import gapwise.review.kept.DigestNumber;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** An event over time after each method, in short. */
public final class CourseDigest {
  private CourseDigest() {}

  /** What is known of an event over time. */
  public static Digested of(CourseAnswer answer) {
    List<DigestNumber> numbers = new ArrayList<>();
    for (MethodCourse course : answer.methods()) {
      String method = course.method().label();
      String rests =
          say(
              "review.rests",
              Map.of(
                  "studies",
                  course.studies(),
                  "patients",
                  Shown.grouped(Integer.toString(course.patients()))));
      numbers.add(
          new DigestNumber(
              method, CourseTold.sentence(course, CourseTold.reached(answer)), "", rests));
      for (int month : CourseTold.MONTHS) {
        course
            .by(month)
            .ifPresent(
                by ->
                    numbers.add(
                        new DigestNumber(
                            say("review.by-month", Map.of("method", method, "month", month)),
                            shares(by.share(), by.limits()),
                            "",
                            "")));
      }
      course
          .restrictedMean()
          .ifPresent(
              mean ->
                  numbers.add(
                      new DigestNumber(
                          say("review.restricted-mean", Map.of("method", method)),
                          within(
                              Shown.months(mean.months()), mean.limits().map(CourseDigest::months)),
                          "",
                          "")));
    }
    return new Digested(answer.curves().stream().map(CurveTaken::row).toList(), numbers);
  }

  private static String shares(double share, Optional<Limits> limits) {
    return within(
        CourseTold.hundredths(share),
        limits.map(
            one ->
                say(
                    "review.range",
                    Map.of(
                        "from",
                        CourseTold.hundredths(one.lower()),
                        "to",
                        CourseTold.hundredths(one.upper())))));
  }

  private static String months(Limits limits) {
    return say(
        "review.range",
        Map.of("from", Shown.months(limits.lower()), "to", Shown.months(limits.upper())));
  }

  private static String within(String value, Optional<String> range) {
    return range.map(one -> value + " (" + one + ")").orElse(value);
  }
}
