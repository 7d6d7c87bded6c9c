package gapwise.synthesis.multiverse;

import java.util.List;

/**
 * Some of the rows.
 *
 * @param settings the levels of the choices that single these rows out
 * @param rows their places, from 0 and rising
 */
public record Subset(Settings settings, List<Integer> rows) {
  public Subset {
    rows = List.copyOf(rows);
  }
}
