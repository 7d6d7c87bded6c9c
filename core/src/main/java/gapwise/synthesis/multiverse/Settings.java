package gapwise.synthesis.multiverse;

import java.util.Arrays;

/**
 * Which level of each choice is taken, by number; a choice that has no meaning, such as the
 * estimator of tau squared under a common effect, has none. Immutable.
 */
public final class Settings {
  /** No level. */
  public static final int NONE = -1;

  private final int[] levels;

  private Settings(int[] levels) {
    this.levels = levels;
  }

  /** No level of any choice. */
  public static Settings none(int choices) {
    int[] levels = new int[choices];
    Arrays.fill(levels, NONE);
    return new Settings(levels);
  }

  /** The same with a level of one choice. */
  public Settings with(int choice, int level) {
    int[] other = levels.clone();
    other[choice] = level;
    return new Settings(other);
  }

  /** These and, for choices without a level here, those of others. */
  Settings and(Settings others) {
    int[] both = levels.clone();
    for (int i = 0; i < both.length; i++) {
      both[i] = both[i] == NONE ? others.levels[i] : both[i];
    }
    return new Settings(both);
  }

  /** The level of a choice, from 0; {@link #NONE} if it has no meaning. */
  public int level(int choice) {
    return levels[choice];
  }

  /** Number of choices. */
  public int size() {
    return levels.length;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Settings settings && Arrays.equals(levels, settings.levels);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(levels);
  }

  @Override
  public String toString() {
    return Arrays.toString(levels);
  }
}
