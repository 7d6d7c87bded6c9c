package gapwise.problem;

import java.util.Objects;
import java.util.regex.Pattern;

/**
 * One thing that a person must know about what they gave us.
 *
 * @param where the place in their own words: a field of a plan, or sheet, row and column; may be
 *     empty when the whole is meant
 * @param code kebab-case word that stays stable between versions
 * @param message what is wrong, what was found, what was expected and what to do, as a sentence
 */
public record Problem(String where, String code, String message) {
  private static final Pattern CODE = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");

  public Problem {
    Objects.requireNonNull(where, "where");
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(message, "message");
    if (!CODE.matcher(code).matches()) {
      throw new IllegalArgumentException("code must be a kebab-case word, was '" + code + "'");
    }
    if (message.isBlank()) {
      throw new IllegalArgumentException("message must say something, code " + code);
    }
  }

  /** The problem as one line for a terminal or a log. */
  public String line() {
    return where.isEmpty() ? message : where + ": " + message;
  }
}
