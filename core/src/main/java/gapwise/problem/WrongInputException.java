package gapwise.problem;

import java.util.List;

/**
 * What a person gave cannot be used, with every reason. Thrown once at the end of reading, caught
 * once at each door, which answers with the list.
 */
public final class WrongInputException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient List<Problem> problems;

  /**
   * @param problems at least one
   */
  public WrongInputException(List<Problem> problems) {
    super(problems.isEmpty() ? "no problem given" : problems.get(0).line());
    if (problems.isEmpty()) {
      throw new IllegalArgumentException("a wrong input needs at least one problem");
    }
    this.problems = List.copyOf(problems);
  }

  /** Every reason, in the order in which they were found. */
  public List<Problem> problems() {
    return problems;
  }
}
