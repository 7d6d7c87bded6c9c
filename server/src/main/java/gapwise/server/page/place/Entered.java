package gapwise.server.page.place;

import gapwise.place.PatientCase;
import gapwise.problem.Problem;
import java.util.List;
import java.util.Optional;

/**
 * What is entered of a case so far, drawn alone.
 *
 * @param patientCase the case; empty where nothing is entered that has a place, or something is
 *     wrong
 * @param drawing its course as SVG; empty where there is nothing to draw
 * @param course its phases in words; empty where none is entered
 * @param problems what is wrong
 */
public record Entered(
    Optional<PatientCase> patientCase,
    Optional<String> drawing,
    Optional<CourseLines> course,
    List<Problem> problems) {
  static final Entered NOTHING =
      new Entered(Optional.empty(), Optional.empty(), Optional.empty(), List.of());

  public Entered {
    problems = List.copyOf(problems);
  }

  static Entered wrong(List<Problem> problems) {
    return new Entered(Optional.empty(), Optional.empty(), Optional.empty(), problems);
  }
}
