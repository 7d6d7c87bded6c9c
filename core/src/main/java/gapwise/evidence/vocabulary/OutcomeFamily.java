package gapwise.evidence.vocabulary;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Outcomes under one heading: the ways in which papers report one thing, such as weight bearing.
 * They do not count the same, so one is pooled at a time.
 *
 * @param name the heading
 * @param outcomes in the order in which lists show them, at least one
 */
public record OutcomeFamily(String name, List<Outcome> outcomes) {
  private static final Map<String, OutcomeFamily> ALL = read();

  public OutcomeFamily {
    Objects.requireNonNull(name, "name");
    outcomes = List.copyOf(outcomes);
  }

  private static Map<String, OutcomeFamily> read() {
    Map<String, List<Outcome>> byName =
        Outcome.vocabulary().all().stream()
            .collect(
                Collectors.groupingBy(Outcome::family, LinkedHashMap::new, Collectors.toList()));
    Map<String, OutcomeFamily> families = new LinkedHashMap<>();
    byName.forEach((name, outcomes) -> families.put(name, new OutcomeFamily(name, outcomes)));
    return families;
  }

  /** All families in the order in which lists show them. */
  public static List<OutcomeFamily> all() {
    return List.copyOf(ALL.values());
  }

  /** The family of an outcome. */
  public static OutcomeFamily of(Outcome outcome) {
    return Objects.requireNonNull(ALL.get(outcome.family()), outcome::family);
  }

  /** The families of which every outcome is among these codes, where there are several of it. */
  public static List<OutcomeFamily> whole(Collection<String> codes) {
    return ALL.values().stream()
        .filter(family -> family.outcomes().size() > 1 && codes.containsAll(family.codes()))
        .toList();
  }

  /** The family of which these are all the outcomes, no more and no less; empty for others. */
  public static Optional<OutcomeFamily> exactly(Collection<String> codes) {
    return whole(codes).stream()
        .filter(family -> family.outcomes().size() == codes.size())
        .findFirst();
  }

  /** The codes of its outcomes, in their order. */
  public List<String> codes() {
    return outcomes.stream().map(Outcome::code).toList();
  }
}
