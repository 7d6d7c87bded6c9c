package gapwise.problem;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Objects;
import java.util.regex.Pattern;

/**
 * One thing that a person must know about what they gave us. Place and message are shortened in the
 * middle should they be longer than anybody reads, as when they quote a cell that holds a book.
 *
 * @param where the place in their own words: a field of a plan, or sheet, row and column; may be
 *     empty when the whole is meant
 * @param code kebab-case word that stays stable between versions
 * @param message what is wrong, what was found, what was expected and what to do, as a sentence
 * @param about the record that it is about, such as the id of a study; empty when it is about none
 */
public record Problem(
    String where,
    String code,
    String message,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) String about) {
  private static final Pattern CODE = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");

  /** Letters of a place; the longest of ours have some hundred. */
  private static final int LONGEST_PLACE = 300;

  /** Letters of a message. */
  private static final int LONGEST_MESSAGE = 2_000;

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
    where = shortened(where, LONGEST_PLACE);
    // Text that was stored before this field existed has none.
    about = shortened(Objects.requireNonNullElse(about, ""), LONGEST_PLACE);
    message = shortened(message, LONGEST_MESSAGE);
  }

  /** A problem that is about no record. */
  public Problem(String where, String code, String message) {
    this(where, code, message, "");
  }

  /** Keeps both ends, since what to do stands last. */
  private static String shortened(String text, int most) {
    if (text.length() <= most) {
      return text;
    }
    String left = text.substring(0, most / 2).replaceFirst("[\\ud800-\\udbff]$", "");
    String right =
        text.substring(text.length() - most / 2 + 5).replaceFirst("^[\\udc00-\\udfff]", "");
    return left + " ... " + right;
  }

  /** The problem as one line for a terminal or a log. */
  public String line() {
    return where.isEmpty() ? message : where + ": " + message;
  }
}
