package gapwise.server.address;

import gapwise.course.Courses;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.List;

/** Reads how far an event is followed over time from an address: {@code horizon}, in months. */
public final class CourseAddress {
  /** The name of the months to which a restricted mean reaches. */
  public static final String HORIZON = "horizon";

  /** Longer than curves of this trade are followed together. */
  private static final int LONGEST = 60;

  private CourseAddress() {}

  /**
   * The months to which restricted means reach, the usual ones unless the address has some.
   *
   * @throws WrongInputException for what is no such number
   */
  public static int horizon(Address address) {
    String text = address.first(HORIZON);
    if (text.isEmpty()) {
      return Courses.USUAL_HORIZON;
    }
    if (!text.matches("[1-9]\\d?") || Integer.parseInt(text) > LONGEST) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  HORIZON,
                  "not-months",
                  "'" + text + "'; expected whole months from 1 to " + LONGEST)));
    }
    return Integer.parseInt(text);
  }
}
