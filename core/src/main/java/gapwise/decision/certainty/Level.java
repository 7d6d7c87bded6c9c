package gapwise.decision.certainty;

import gapwise.evidence.vocabulary.Coded;
import java.util.Collection;

/** How certain a number is, the highest first (GRADE working group; Guyatt et al. 2008). */
public enum Level implements Coded {
  HIGH("high"),
  MODERATE("moderate"),
  LOW("low"),
  VERY_LOW("very low");

  private final String label;

  Level(String label) {
    this.label = label;
  }

  @Override
  public String code() {
    return Coded.codeOf(this);
  }

  @Override
  public String label() {
    return label;
  }

  /** This level some steps lower, or higher where negative; kept within the four. */
  Level lowered(int steps) {
    int place = Math.min(VERY_LOW.ordinal(), Math.max(HIGH.ordinal(), ordinal() + steps));
    return values()[place];
  }

  /**
   * The lowest of some levels: of a decision, over its critical outcomes (Guyatt et al., J Clin
   * Epidemiol 2013;66:151).
   *
   * @param critical at least one
   */
  public static Level lowest(Collection<Level> critical) {
    return critical.stream()
        .max(Level::compareTo)
        .orElseThrow(() -> new IllegalArgumentException("no critical outcome"));
  }
}
