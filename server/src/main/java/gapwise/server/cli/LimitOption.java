package gapwise.server.cli;

import gapwise.budget.Budget;
import gapwise.budget.Limit;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.List;
import java.util.Optional;

/**
 * The option {@code --limit} of commands that compute: {@code seconds=600}, or {@code none} for no
 * limit but those that other options name.
 */
final class LimitOption {
  /** What the option is called, for messages. */
  static final String OPTION = "--limit";

  private static final String NONE = "none";

  private LimitOption() {}

  /**
   * The budget that a command line asks for.
   *
   * @param asked each as it was given; none for what a request over the network gets
   * @throws WrongInputException if one names no limit, or no number above 0
   */
  static Budget of(List<String> asked) {
    Budget budget = asked.contains(NONE) ? Budget.UNLIMITED : Budget.STANDARD;
    for (String one : asked) {
      if (!one.equals(NONE)) {
        budget = with(budget, one);
      }
    }
    return budget;
  }

  private static Budget with(Budget budget, String asked) {
    String[] parts = asked.split("=", 2);
    Optional<Limit> limit = Limit.of(parts[0].strip());
    if (limit.isEmpty()) {
      throw wrong(
          "unknown-limit",
          "found '"
              + parts[0]
              + "', expected 'none' or one of "
              + Limit.codes()
              + " with a number");
    }
    String number = parts.length == 2 ? parts[1].strip() : "";
    if (!number.matches("[1-9]\\d{0,17}")) {
      throw wrong(
          "not-a-number",
          "found '"
              + asked
              + "', expected a whole number above 0 after the limit, such as "
              + parts[0]
              + "="
              + limit.get().standard());
    }
    return budget.with(limit.get(), Long.parseLong(number));
  }

  private static WrongInputException wrong(String code, String message) {
    return new WrongInputException(List.of(new Problem(OPTION, code, message)));
  }
}
