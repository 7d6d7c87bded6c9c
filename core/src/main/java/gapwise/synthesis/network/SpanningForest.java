package gapwise.synthesis.network;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * The most precise comparisons that join all treatments without a loop: a spanning tree of each
 * connected piece with the largest weights. Its comparisons are the parameters of the network,
 * because every other comparison is then a sum of parameters that are known better than it, and
 * weights that differ by twenty powers of ten cost no digits in the normal equations.
 */
final class SpanningForest {
  /** No edge leads here: the root of a piece. */
  private static final int NONE = -1;

  private final Edge[] edges;
  private final int[] parent;
  private final int[] edge;
  private final int[] depth;
  private final int[] piece;
  private final int pieces;

  private record Candidate(int one, int other, double variance) {}

  /** A parameter: one treatment less another. */
  record Edge(int one, int other) {}

  /** A signed sum of parameters: the place of each and 1 or -1. */
  record Path(int[] edges, double[] signs) {}

  private SpanningForest(int treatments, List<Candidate> tree) {
    edges = new Edge[tree.size()];
    parent = new int[treatments];
    edge = new int[treatments];
    depth = new int[treatments];
    piece = new int[treatments];
    List<List<int[]>> next = new ArrayList<>();
    for (int i = 0; i < treatments; i++) {
      next.add(new ArrayList<>());
    }
    for (int e = 0; e < tree.size(); e++) {
      Candidate c = tree.get(e);
      next.get(c.one()).add(new int[] {c.other(), e});
      next.get(c.other()).add(new int[] {c.one(), e});
    }
    Arrays.fill(piece, NONE);
    int found = 0;
    for (int root = 0; root < treatments; root++) {
      if (piece[root] == NONE) {
        grow(root, found, next);
        found++;
      }
    }
    pieces = found;
  }

  private void grow(int root, int number, List<List<int[]>> next) {
    ArrayDeque<Integer> open = new ArrayDeque<>(List.of(root));
    parent[root] = NONE;
    edge[root] = NONE;
    piece[root] = number;
    while (!open.isEmpty()) {
      int at = open.remove();
      for (int[] way : next.get(at)) {
        int to = way[0];
        if (piece[to] == NONE) {
          piece[to] = number;
          parent[to] = at;
          edges[way[1]] = new Edge(to, at);
          edge[to] = way[1];
          depth[to] = depth[at] + 1;
          open.add(to);
        }
      }
    }
  }

  /**
   * The forest of a network.
   *
   * @param treatments how many there are
   * @param studies of treatments that {@code index} numbers
   */
  static SpanningForest of(int treatments, List<NetworkStudy> studies, TreatmentIndex index) {
    List<Candidate> candidates = new ArrayList<>();
    for (NetworkStudy study : studies) {
      for (int i = 0; i < study.treatments().size(); i++) {
        for (int j = 0; j < i; j++) {
          candidates.add(
              new Candidate(
                  index.of(study.treatments().get(i)),
                  index.of(study.treatments().get(j)),
                  study.variance(i, j)));
        }
      }
    }
    candidates.sort(Comparator.comparingDouble(Candidate::variance));
    Joined joined = new Joined(treatments);
    List<Candidate> tree = new ArrayList<>();
    for (Candidate candidate : candidates) {
      if (joined.join(candidate.one(), candidate.other())) {
        tree.add(candidate);
      }
    }
    return new SpanningForest(treatments, tree);
  }

  /** Number of parameters. */
  int parameters() {
    return edges.length;
  }

  /** What a parameter compares. */
  Edge edge(int parameter) {
    return edges[parameter];
  }

  /** Number of connected pieces. */
  int pieces() {
    return pieces;
  }

  /** The connected piece of a treatment, from 0 in the order of treatments. */
  int piece(int treatment) {
    return piece[treatment];
  }

  /** One treatment less another of the same piece, as a sum of parameters. */
  Path path(int one, int other) {
    List<Integer> along = new ArrayList<>();
    List<Double> signs = new ArrayList<>();
    int a = one;
    int b = other;
    while (a != b) {
      boolean up = depth[a] >= depth[b];
      along.add(up ? edge[a] : edge[b]);
      signs.add(up ? 1.0 : -1.0);
      if (up) {
        a = parent[a];
      } else {
        b = parent[b];
      }
    }
    return new Path(
        along.stream().mapToInt(Integer::intValue).toArray(),
        signs.stream().mapToDouble(Double::doubleValue).toArray());
  }
}
