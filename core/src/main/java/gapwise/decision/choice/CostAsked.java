package gapwise.decision.choice;

import gapwise.decision.cost.CostEntries;
import gapwise.evidence.vocabulary.Method;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a table is to be reckoned in costs.
 *
 * @param entries what somebody entered, whole or not
 * @param upTo the most money for one more year that is looked at, above 0; empty where not entered
 * @param against the method that the others are held against; empty for the first
 * @param stages planned stages by code of the method, 1 to {@link Stages#MOST}; as the records have
 *     them for a method without an entry
 * @param unknowns what becomes of what is not known
 * @param seed the same seed gives the same result
 */
public record CostAsked(
    CostEntries entries,
    OptionalDouble upTo,
    Optional<Method> against,
    Map<String, Integer> stages,
    Unknowns unknowns,
    long seed) {
  public CostAsked {
    Objects.requireNonNull(entries, "entries");
    Objects.requireNonNull(upTo, "upTo");
    Objects.requireNonNull(against, "against");
    stages = Map.copyOf(stages);
    Objects.requireNonNull(unknowns, "unknowns");
    if (upTo.isPresent() && !(upTo.getAsDouble() > 0)) {
      throw new IllegalArgumentException("money for a year is above 0, was " + upTo);
    }
  }
}
