package gapwise.exchange;

import gapwise.problem.Problem;
import java.util.Objects;

/**
 * Something that a reviewer should know of a template: doubtful, to be looked up in the paper and
 * acknowledged, or a proposal, which stands until somebody says better.
 *
 * @param key the same for the same doubt about the same values, wherever the row stands; what a
 *     reviewer acknowledges
 * @param problem place, code and words
 * @param asks whether it must be acknowledged before anything is stored
 */
public record Warning(String key, Problem problem, boolean asks) {
  public Warning {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(problem, "problem");
  }
}
