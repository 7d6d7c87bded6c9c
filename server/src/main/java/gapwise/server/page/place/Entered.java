package gapwise.server.page.place;

import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Setting;
import gapwise.figure.timeline.Timeline;
import gapwise.place.PatientCase;
import gapwise.problem.Problem;
import java.util.List;
import java.util.Optional;

/**
 * What is entered of a case so far, drawn alone.
 *
 * @param patientCase the case; empty where nothing is entered that has a place, or something is
 *     wrong
 * @param drawing its course; empty where there is nothing to draw
 * @param course its phases in words; empty where none is entered
 * @param leftOut phases that stand in the form without a length, and so are no part of the course
 * @param problems what is wrong
 */
public record Entered(
    Optional<PatientCase> patientCase,
    Optional<Drawing> drawing,
    Optional<CourseLines> course,
    List<String> leftOut,
    List<Problem> problems) {
  /**
   * A course drawn.
   *
   * @param sentences how its tracks are to be read
   * @param svg the drawing
   */
  public record Drawing(List<String> sentences, String svg) {
    static Drawing of(Timeline timeline) {
      Setting phone = Setting.withinPage(Medium.PHONE);
      return new Drawing(timeline.sentences(), timeline.draw(phone).get(0).inline());
    }
  }

  static final Entered NOTHING =
      new Entered(Optional.empty(), Optional.empty(), Optional.empty(), List.of(), List.of());

  public Entered {
    leftOut = List.copyOf(leftOut);
    problems = List.copyOf(problems);
  }

  static Entered wrong(List<Problem> problems) {
    return new Entered(Optional.empty(), Optional.empty(), Optional.empty(), List.of(), problems);
  }
}
