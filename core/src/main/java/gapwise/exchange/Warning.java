package gapwise.exchange;

import gapwise.problem.Problem;
import java.util.Objects;

/**
 * Something doubtful that a reviewer must look up in the paper and acknowledge.
 *
 * @param key the same for the same doubt about the same values, wherever the row stands; what a
 *     reviewer acknowledges
 * @param problem place, code and words
 */
public record Warning(String key, Problem problem) {
  public Warning {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(problem, "problem");
  }
}
