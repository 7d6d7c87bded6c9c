package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.screening.Reader;
import gapwise.server.job.PostedForm;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Who does something, and why, as a form sends it.
 *
 * @param who the person, by the name under which she screens
 * @param why the reason, not blank
 */
public record By(Reader who, String why) {
  /** Longest reason, in letters. */
  public static final int LONGEST_WHY = 500;

  public By {
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(why, "why");
  }

  /**
   * Reads both.
   *
   * @throws WrongInputException where one is missing or cannot be
   */
  public static By read(PostedForm form) {
    String why = form.first("why");
    if (why.isBlank() || why.length() > LONGEST_WHY) {
      throw wrong("why", "missing-value", say("kept.why", Map.of("most", LONGEST_WHY)));
    }
    return new By(who(form), why);
  }

  /** Reads who it is, with a reason that goes without saying. */
  public static By read(PostedForm form, String why) {
    return new By(who(form), why);
  }

  private static Reader who(PostedForm form) {
    return person(form.first("who"))
        .orElseThrow(() -> wrong("who", "missing-value", say("review.who")));
  }

  /**
   * The person of a typed name; empty where none is typed.
   *
   * @throws WrongInputException where it is no name
   */
  public static Optional<Reader> person(String typed) {
    if (typed.isBlank()) {
      return Optional.empty();
    }
    Optional<Reader> reader = Reader.of(typed);
    if (reader.isEmpty()) {
      throw wrong("who", "not-a-name", say("screening.not-a-name", Map.of("most", Reader.LONGEST)));
    }
    return reader;
  }

  /** One thing that is wrong in what was sent. */
  public static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }
}
