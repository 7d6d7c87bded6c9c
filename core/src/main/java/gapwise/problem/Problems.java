package gapwise.problem;

import java.util.ArrayList;
import java.util.List;

/**
 * A list that finders add to, so that a person hears of everything in one go. Not thread-safe: one
 * collector belongs to one reading.
 */
public final class Problems {
  private final List<Problem> found = new ArrayList<>();

  /** Adds one problem; see {@link Problem} for the meaning of the parts. */
  public void add(String where, String code, String message) {
    found.add(new Problem(where, code, message));
  }

  /** Adds a problem that was made elsewhere. */
  public void add(Problem problem) {
    found.add(problem);
  }

  /** Adds all of a list, in its order. */
  public void addAll(List<Problem> problems) {
    found.addAll(problems);
  }

  public boolean isEmpty() {
    return found.isEmpty();
  }

  public int size() {
    return found.size();
  }

  /** What was found, in the order in which it was found. */
  public List<Problem> list() {
    return List.copyOf(found);
  }
}
