package gapwise.synthesis.multiverse;

import java.util.BitSet;
import java.util.List;

/**
 * Some of the rows. One bit a row is kept, since subsets can be hundreds of thousands and their
 * places are wanted one subset after the other. Immutable.
 */
public final class Subset {
  private final Settings settings;
  private final BitSet rows;

  private Subset(Settings settings, BitSet rows) {
    this.settings = settings;
    this.rows = rows;
  }

  /**
   * Some rows.
   *
   * @param settings the levels of the choices that single these rows out
   * @param rows their places, from 0
   */
  public Subset(Settings settings, List<Integer> rows) {
    this(settings, new BitSet());
    rows.forEach(this.rows::set);
  }

  /** The levels of the choices that single these rows out. */
  public Settings settings() {
    return settings;
  }

  /** The places of the rows, rising. */
  public List<Integer> rows() {
    return rows.stream().boxed().toList();
  }

  /** Those that are among others too. */
  public Subset narrowed(Settings narrower, BitSet others) {
    BitSet both = (BitSet) rows.clone();
    both.and(others);
    return new Subset(narrower, both);
  }
}
