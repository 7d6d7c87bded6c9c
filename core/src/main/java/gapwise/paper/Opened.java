package gapwise.paper;

import java.util.Objects;

/**
 * A file that can be read.
 *
 * @param paper to be closed by whoever opened it
 */
public record Opened(Paper paper) implements Opening {
  public Opened {
    Objects.requireNonNull(paper, "paper");
  }
}
