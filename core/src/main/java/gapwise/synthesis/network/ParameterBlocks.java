package gapwise.synthesis.network;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Parameters in sets that no row joins, each of which can be solved alone. A network without a loop
 * falls into its single comparisons; one in which every design has effects of its own into its
 * designs, so that time grows with their number and not with its cube.
 */
final class ParameterBlocks {
  private final int[] block;
  private final int[] place;
  private final int[][] members;

  private ParameterBlocks(int[] block, int[] place, int[][] members) {
    this.block = block;
    this.place = place;
    this.members = members;
  }

  /** The blocks of some rows, in the order of their first parameters. */
  static ParameterBlocks of(int parameters, List<SparseRow> rows) {
    Joined joined = new Joined(parameters);
    for (SparseRow row : rows) {
      for (int i = 1; i < row.places().length; i++) {
        joined.join(row.places()[0], row.places()[i]);
      }
    }
    Map<Integer, List<Integer>> sets = new HashMap<>();
    List<List<Integer>> inOrder = new ArrayList<>();
    int[] block = new int[parameters];
    int[] place = new int[parameters];
    for (int p = 0; p < parameters; p++) {
      List<Integer> set = sets.computeIfAbsent(joined.setOf(p), first -> new ArrayList<>());
      if (set.isEmpty()) {
        inOrder.add(set);
        block[p] = inOrder.size() - 1;
      } else {
        block[p] = block[set.get(0)];
      }
      place[p] = set.size();
      set.add(p);
    }
    return new ParameterBlocks(
        block,
        place,
        inOrder.stream()
            .map(set -> set.stream().mapToInt(Integer::intValue).toArray())
            .toArray(int[][]::new));
  }

  /** Number of parameters in all. */
  int parameters() {
    return block.length;
  }

  /** Number of blocks. */
  int count() {
    return members.length;
  }

  /** The parameters of a block, rising; not to be changed. */
  int[] members(int number) {
    return members[number];
  }

  /** The block of a parameter. */
  int block(int parameter) {
    return block[parameter];
  }

  /** The place of a parameter in its block. */
  int place(int parameter) {
    return place[parameter];
  }

  /** A matrix of zeros for each block. */
  double[][][] zeros() {
    double[][][] zeros = new double[members.length][][];
    for (int b = 0; b < zeros.length; b++) {
      zeros[b] = new double[members[b].length][members[b].length];
    }
    return zeros;
  }
}
