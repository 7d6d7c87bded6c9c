package gapwise.answer.grid;

import gapwise.evidence.vocabulary.Design;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * How much is recorded of one thing.
 *
 * @param studies number of studies
 * @param arms number of groups of patients
 * @param patients patients of those groups that say how many they have
 * @param designs number of studies of each design that there is, best first; studies that give none
 *     are in none of them
 */
public record Tally(int studies, int arms, long patients, Map<Design, Integer> designs) {
  /** Nothing. */
  public static final Tally NOTHING = new Tally(0, 0, 0, Map.of());

  public Tally {
    designs = designs.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(designs));
  }

  /** Whether there is nothing. */
  public boolean isNothing() {
    return arms == 0;
  }

  /** The design that says most of cause and effect; empty where no study gives its design. */
  public Optional<Design> best() {
    return designs.keySet().stream().findFirst();
  }

  /** Studies whose design is not given. */
  public int designNotGiven() {
    int given = 0;
    for (int ofDesign : designs.values()) {
      given += ofDesign;
    }
    return studies - given;
  }
}
