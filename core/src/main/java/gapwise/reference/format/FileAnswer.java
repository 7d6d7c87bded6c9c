package gapwise.reference.format;

import gapwise.problem.Problem;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What became of a file as a whole.
 *
 * @param name name of the file
 * @param format its format, if it is one that is read
 * @param encoding its encoding
 * @param read records that were read, doubtful ones among them
 * @param doubtful records that were read and that a person should look at
 * @param refused records that stay out
 * @param problems what must be known of the file as a whole
 */
public record FileAnswer(
    String name,
    Optional<Format> format,
    String encoding,
    int read,
    int doubtful,
    int refused,
    List<Problem> problems) {
  public FileAnswer {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(format, "format");
    Objects.requireNonNull(encoding, "encoding");
    problems = List.copyOf(problems);
  }

  /** Records that the file holds. */
  public int records() {
    return read + refused;
  }
}
