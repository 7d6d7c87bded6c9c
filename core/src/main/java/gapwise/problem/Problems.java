package gapwise.problem;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A list that finders add to, so that a person hears of everything in one go: of the first {@link
 * #MOST} one by one, of the others how many there are. Not thread-safe: one collector belongs to
 * one reading.
 */
public final class Problems {
  /** More than a person mends before trying again; common practice, no source. */
  public static final int MOST = 2_000;

  private final List<Problem> found = new ArrayList<>();
  private int further;

  /** Adds one problem; see {@link Problem} for the meaning of the parts. */
  public void add(String where, String code, String message) {
    if (found.size() < MOST) {
      found.add(new Problem(where, code, message));
    } else {
      further++;
    }
  }

  /** Adds a problem that was made elsewhere. */
  public void add(Problem problem) {
    if (found.size() < MOST) {
      found.add(problem);
    } else {
      further++;
    }
  }

  /** Adds all of a list, in its order. */
  public void addAll(List<Problem> problems) {
    problems.forEach(this::add);
  }

  public boolean isEmpty() {
    return found.isEmpty();
  }

  /** How many were added. */
  public int size() {
    return found.size() + further;
  }

  /**
   * What was found, in the order in which it was found; where more than {@link #MOST} were, the
   * last entry says how many stand for themselves no longer.
   */
  public List<Problem> list() {
    if (further == 0) {
      return List.copyOf(found);
    }
    List<Problem> told = new ArrayList<>(found);
    told.add(
        new Problem(
            "",
            "more-problems",
            String.format(
                Locale.ROOT,
                "%,d more problems were found; mend these first, one slip often makes many",
                further)));
    return List.copyOf(told);
  }
}
