package gapwise.course;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.value.Limits;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** What is said of the curves of a method, in sentences and cells. */
public final class CourseTold {
  /** The month of the first sentence: most limbs that join have done so by then (no source). */
  private static final int MONTH = 12;

  /** Months at which shares are told. */
  public static final List<Integer> MONTHS = CoursePlan.MONTHS;

  private CourseTold() {}

  /**
   * What patients have done when the time asked for ends, such as "had united": curves are drawn of
   * times alone.
   */
  public static String reached(CourseAnswer answer) {
    return answer.question().outcome().reached().orElseThrow();
  }

  /**
   * The share of a method by a year, with whose it is.
   *
   * @param reached what patients have done when the time ends
   */
  public static String sentence(MethodCourse course, String reached) {
    Map<String, Object> values = new HashMap<>();
    values.put("method", course.method().label());
    values.put("month", MONTH);
    values.put("patients", course.patients());
    boolean alone = course.curves().size() == 1;
    if (alone) {
      values.put("label", course.curves().get(0).label());
    } else {
      values.put("curves", course.curves().size());
      values.put("studies", course.studies());
    }
    Optional<ShareBy> by = course.by(MONTH);
    if (by.isEmpty()) {
      return say(alone ? "course.alone-not-so-far" : "course.pooled-not-so-far", values);
    }
    values.put("reached", reached);
    values.put("share", hundredths(by.get().share()));
    values.put("interval", interval(by.get().limits()));
    return say(alone ? "course.alone" : "course.pooled", values);
  }

  private static String interval(Optional<Limits> limits) {
    return limits
        .map(
            range ->
                say(
                    "course.interval",
                    Map.of("lower", hundredths(range.lower()), "upper", hundredths(range.upper()))))
        .orElseGet(() -> say("course.no-interval"));
  }

  /** A share of 100, whole: the curves carry no more. */
  public static String hundredths(double share) {
    return String.valueOf(Math.round(100 * share));
  }

  /** What must be known of these curves beside what holds for all results. */
  public static List<String> cautions(CourseAnswer answer) {
    long ofArm = answer.curves().stream().filter(CurveTaken::ofArm).count();
    boolean strokes = answer.curves().stream().anyMatch(one -> !one.curve().lastSeen().isEmpty());
    return Stream.of(
            Optional.of(say("course.competing")),
            Optional.of(say("course.clock-from-rows"))
                .filter(words -> answer.question().outcome().needsClock()),
            Optional.of(say("course.strokes")).filter(words -> strokes),
            ofArm > 0
                ? Optional.of(say("course.patients-of-arm", Map.of("curves", ofArm)))
                : Optional.<String>empty())
        .flatMap(Optional::stream)
        .toList();
  }
}
