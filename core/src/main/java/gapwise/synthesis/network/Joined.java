package gapwise.synthesis.network;

/** Sets of numbered things that are joined two at a time (union-find with halving of paths). */
final class Joined {
  private final int[] parent;

  Joined(int size) {
    parent = new int[size];
    for (int i = 0; i < size; i++) {
      parent[i] = i;
    }
  }

  /** The representative of the set a thing is in. */
  int setOf(int thing) {
    int at = thing;
    while (parent[at] != at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  }

  /** Joins two sets; whether they were apart. */
  boolean join(int one, int other) {
    int first = setOf(one);
    int second = setOf(other);
    parent[Math.max(first, second)] = Math.min(first, second);
    return first != second;
  }
}
