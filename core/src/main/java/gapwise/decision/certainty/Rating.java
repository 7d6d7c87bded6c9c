package gapwise.decision.certainty;

import java.util.List;
import java.util.Objects;

/**
 * The certainty of one number.
 *
 * @param start where the evidence starts
 * @param lowerings one for each domain, in the order of {@link Domain}
 * @param raised levels by which it is raised, 0 or more; only where nothing lowers it (Schunemann
 *     et al., J Clin Epidemiol 2019;111:105, table 1) and never of a rate itself
 */
public record Rating(Start start, List<Lowering> lowerings, int raised) {
  public Rating {
    Objects.requireNonNull(start, "start");
    lowerings = List.copyOf(lowerings);
    if (!lowerings.stream().map(Lowering::domain).toList().equals(List.of(Domain.values()))) {
      throw new IllegalArgumentException("one for each domain in order, were " + lowerings);
    }
    int lowered = lowerings.stream().mapToInt(Lowering::levels).sum();
    if (raised < 0 || (raised > 0 && (lowered > 0 || start != Start.COMPARED))) {
      throw new IllegalArgumentException(
          "raised by " + raised + " from " + start + " though lowered by " + lowered);
    }
  }

  /** The level that this comes to. */
  public Level level() {
    int lowered = lowerings.stream().mapToInt(Lowering::levels).sum();
    return start.level().lowered(lowered - raised);
  }

  /** The domains that lower it. */
  public List<Lowering> lowering() {
    return lowerings.stream().filter(one -> one.levels() > 0).toList();
  }

  /** What one domain takes. */
  public Lowering of(Domain domain) {
    return lowerings.get(domain.ordinal());
  }

  /** The letters of what lowers it, one for each level: "BPP"; empty where nothing does. */
  public String letters() {
    StringBuilder letters = new StringBuilder();
    lowerings.forEach(one -> letters.append(one.domain().letter().repeat(one.levels())));
    return letters.toString();
  }
}
