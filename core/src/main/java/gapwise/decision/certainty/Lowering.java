package gapwise.decision.certainty;

import java.util.Objects;

/**
 * What one domain takes from the certainty.
 *
 * @param domain which
 * @param levels by how many levels, 0 to 3 (three: Zeng et al., J Clin Epidemiol 2022;150:216)
 * @param reason whole sentence with the numbers that it rests on
 */
public record Lowering(Domain domain, int levels, String reason) {
  private static final int MOST = 3;

  public Lowering {
    Objects.requireNonNull(domain, "domain");
    Objects.requireNonNull(reason, "reason");
    if (levels < 0 || levels > MOST) {
      throw new IllegalArgumentException("levels must be 0 to 3, was " + levels);
    }
  }
}
